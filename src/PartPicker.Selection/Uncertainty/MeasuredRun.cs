using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>A measured run in hand: what was fitted, where the belt ran, and what was read.</summary>
/// <param name="SolvesFriction">True where the run was asked for the belt's friction too.</param>
/// <param name="TorqueFactor">Torque in the air of the run over torque at sea level.</param>
internal sealed record MeasuredRun(
    SetUp Set, BeltPosition[] Positions, double[] Rpm, double TorqueFactor, double? EngagementRpm, bool SolvesFriction);
