namespace PartPicker.Selection;

/// <summary>One uncertain input: its limit, and what a deviation of one limit is for the set and for the measured run.</summary>
/// <param name="Name">What it is.</param>
/// <param name="InSet">The inputs of the set with this one off by a share of its limit.</param>
/// <param name="InRun">Those of the run: off as well where both have the same part, the same belt and the same engine.</param>
internal sealed record UncertainInput(string Name, Func<double, Deviation> InSet, Func<double, Deviation> InRun);

/// <summary>The uncertain inputs of a set, independent of each other.</summary>
internal static class Inputs
{
    /// <param name="set">The set that is asked about.</param>
    /// <param name="run">The run that ties the model; one that tells the belt's friction leaves no doubt of it.</param>
    /// <param name="torqueShare">Limit of the engine's torque.</param>
    public static IReadOnlyList<UncertainInput> Of(SetUp set, MeasuredRun? run, double torqueShare)
    {
        List<UncertainInput> inputs =
        [
            Common("engine torque", t => new Deviation { TorqueShare = t * torqueShare }),
        ];
        if (run is not { SolvesFriction: true })
            inputs.Add(Common("belt friction", t => new Deviation { Friction = t * InputTolerances.Friction }));
        SetUp? other = run?.Set;
        Add(DriveSpring(set), set.DriveSpring.Id == other?.DriveSpring.Id, other is null ? [] : DriveSpring(other));
        Add(Flyweight, set.Flyweight.Body.Id == other?.Flyweight.Body.Id, other is null ? [] : Flyweight);
        Add(DrivenSpring(set), set.Driven.Spring.Id == other?.Driven.Spring.Id, other is null ? [] : DrivenSpring(other));
        return inputs;

        void Add((string Name, Func<double, Deviation> Of)[] own, bool same, (string Name, Func<double, Deviation> Of)[] ofRun)
        {
            inputs.AddRange(own.Select(i => same ? Common(i.Name, i.Of) : new UncertainInput(i.Name, i.Of, Nothing)));
            if (!same)
                inputs.AddRange(ofRun.Select(i => new UncertainInput($"{i.Name} in the measured run", Nothing, i.Of)));
        }
    }

    private static Deviation Nothing(double share) => Deviation.None;

    private static UncertainInput Common(string name, Func<double, Deviation> of) => new(name, of, of);

    private static (string, Func<double, Deviation>)[] DriveSpring(SetUp set)
    {
        SpringLimits limit = InputTolerances.Of(set.DriveSpring);
        return
        [
            ("drive spring rate", t => new Deviation { DriveRateShare = t * limit.RateShare }),
            ("drive spring free length", t => new Deviation { DriveFreeLength = t * limit.FreeLengthM }),
        ];
    }

    private static readonly (string, Func<double, Deviation>)[] Flyweight =
        [("arm mass", t => new Deviation { BodyMass = t * InputTolerances.ArmMassKg })];

    private static (string, Func<double, Deviation>)[] DrivenSpring(SetUp set)
    {
        SpringLimits limit = InputTolerances.Of(set.Driven.Spring);
        return
        [
            ("driven spring rate", t => new Deviation { DrivenRateShare = t * limit.RateShare }),
            ("driven spring free length", t => new Deviation { DrivenFreeLength = t * limit.FreeLengthM }),
            ("driven spring twist rate", t => new Deviation { TwistRateShare = t * limit.RateShare }),
        ];
    }
}
