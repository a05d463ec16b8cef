using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>A measured run in hand: what was fitted, where the belt ran, and what was read.</summary>
/// <param name="SolvesFriction">True where the run was asked for the belt's friction too.</param>
/// <param name="Air">The air of the run.</param>
/// <param name="TorqueFactor">Torque in that air over torque at sea level.</param>
internal sealed record MeasuredRun(
    SetUp Set, BeltPosition[] Positions, double[] Rpm, AirState Air, double TorqueFactor, double? EngagementRpm,
    bool SolvesFriction);
