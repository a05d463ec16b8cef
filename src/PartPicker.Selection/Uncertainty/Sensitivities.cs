using PartPicker.Mechanics;
using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>What one step of one input changes, all else and the anchor held.</summary>
/// <param name="Parameter">Which input.</param>
/// <param name="Step">The step that the changes are per: a dimension, or a bare number.</param>
/// <param name="EngagementRpm">Change of engagement; null where another device starts the machine.</param>
/// <param name="UpshiftRpm">Change at each point of the curve; null where it does not shift.</param>
public sealed record Sensitivity(string Parameter, Measure Step, double? EngagementRpm, IReadOnlyList<double?> UpshiftRpm);

/// <summary>Central differences of a set's engagement and shift curve; of the next spring hole, what it does as a whole.</summary>
internal static class Sensitivities
{
    private const double AngleStep = 1e-5;

    /// <summary>Every input that a tuner can move, in the steps that a tuner thinks in.</summary>
    public static IReadOnlyList<Sensitivity> Of(InputModel model, SetUp set)
    {
        AnchorFactors factors = model.Predictor.Model.Anchor;
        return
        [
            .. Inputs(model.Predictor.Machine, set).Select(input =>
            {
                double[] perUnit = PerUnit(model, set, factors, input);
                return Of(input.Name, input.Step, perUnit.Select(d => d * input.Step.Value));
            }),
            .. NextHole(model, set, factors),
        ];
    }

    private static Sensitivity Of(string name, Measure step, IEnumerable<double> changes)
    {
        double?[] numbers = [.. changes.Select(d => double.IsNaN(d) ? null : (double?)d)];
        return new Sensitivity(name, step, numbers[0], numbers[1..]);
    }

    /// <summary>
    /// What the hole, or the setting, of the least twist above that of the set does; in the last one, the one before. None
    /// where there is no other, or the spring is not known so far.
    /// </summary>
    private static IEnumerable<Sensitivity> NextHole(InputModel model, SetUp set, AnchorFactors factors)
    {
        MachineModel machine = model.Predictor.Machine;
        double now = set.Driven.Hole.TwistDeg;
        IReadOnlyList<SpringHole> holes = machine.Profile.DrivenClutch.TwistChoices();
        SpringHole? next = holes.Where(h => h.TwistDeg > now).MinBy(h => h.TwistDeg)
            ?? holes.Where(h => h.TwistDeg < now).MaxBy(h => h.TwistDeg);
        if (next is null)
            yield break;
        SetUp there = set with { Driven = set.Driven with { Hole = next } };
        if (!PredictorBuilder.Computable(there, machine, "", []))
            yield break;
        yield return Of(
            Words.Of(next, machine),
            new Measure((next.TwistDeg - now) * (Math.PI / 180), Angle.Info),
            model.Held(there, Deviation.None, factors).Zip(model.Held(set, Deviation.None, factors), (to, from) => to - from));
    }

    private static double[] PerUnit(InputModel model, SetUp set, AnchorFactors factors, Input input)
    {
        double[] above = model.Held(set, input.Of(input.HalfStep), factors);
        double[] below = model.Held(set, input.Of(-input.HalfStep), factors);
        return [.. above.Zip(below, (a, b) => (a - b) / (2 * input.HalfStep))];
    }

    private static IEnumerable<Input> Inputs(MachineModel machine, SetUp set)
    {
        MachineModel onShims = machine.OnShims(set.Spring.ShimThickness);
        double drive = Rate(
            SpringModels.Force(set.DriveSpring)!, onShims.ShortestDriveSpring, onShims.Drivetrain.DriveSpringLength);
        var gram = new Measure(1e-3, Mass.Info);
        var perMillimetre = new Measure(1e3, ForcePerLength.Info);
        var millimetre = new Measure(1e-3, Length.Info);
        var degree = new Measure(Math.PI / 180, Angle.Info);
        var hundredth = new Measure(0.01, null);
        yield return new("drive spring rate", perMillimetre, 1, d => new() { DriveRateShare = d / drive });
        yield return new("drive spring preload", millimetre, 1e-6, d => new() { DriveFreeLength = d });
        yield return new("body mass", gram, 1e-6, d => new() { BodyMass = d });
        foreach (MassStation station in set.Flyweight.Body.Stations())
        {
            // An empty station has no mass to take away.
            if (set.Flyweight.Masses.GetValueOrDefault(station.Name) > 0)
            {
                yield return new(
                    $"{Words.Of(station.Name.ToString())} mass", gram, 1e-6,
                    d => new() { StationMass = (station.Name, d) });
            }
        }

        double driven = Rate(
            SpringModels.Axial(set.Driven.Spring)!, machine.ShortestDrivenSpring, machine.Drivetrain.DrivenSpringLength);

        // A spring that does not push, or does not twist, has no rate to take a share of.
        if (driven != 0)
            yield return new("driven spring rate", perMillimetre, 1, d => new() { DrivenRateShare = d / driven });
        if (machine.Profile.DrivenClutch.Family == DrivenFamily.TorsionAndHelix)
        {
            double from = set.Driven.PreloadTwist;
            double to = from + HelixRules.Cam(set.Driven.Helix, machine).Turn(machine.FullShift.OpeningTravel);
            double twist = -Rate(SpringModels.Twist(set.Driven, machine)!, from, to);
            if (twist != 0)
            {
                yield return new(
                    "driven spring twist rate", new Measure(1, RotationalStiffness.Info), 1e-3,
                    d => new() { TwistRateShare = d / twist });
            }

            yield return new("preload twist", degree, 1e-4, d => new() { PreloadTwist = d });
        }

        yield return new("helix angle", degree, AngleStep, d => new() { HelixAngle = d });
        yield return new("belt friction", hundredth, AngleStep, d => new() { Friction = d });
        yield return new("engine torque", hundredth, AngleStep, d => new() { TorqueShare = d });
    }

    /// <summary>Load lost per length over a span: the rate of a line, the mean rate of a table.</summary>
    private static double Rate(LinearCurve curve, double from, double to)
    {
        double first = Math.Max(from, curve.From);
        double last = Math.Min(to, curve.To);
        return (curve.At(first) - curve.At(last)) / (last - first);
    }

    private sealed record Input(string Name, Measure Step, double HalfStep, Func<double, Deviation> Of);
}
