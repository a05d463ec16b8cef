namespace PartPicker.Selection;

/// <summary>One uncertain input: what a deviation of a share of its limit is for the set and for the other set.</summary>
/// <param name="Name">What it is.</param>
/// <param name="InSet">The inputs of the set with this one off by a share of its limit.</param>
/// <param name="InOther">Those of the other set, that of the measured run or the fitted one: off as well where both have the same part, the same belt and the same engine.</param>
internal sealed record UncertainInput(string Name, Func<double, Deviation> InSet, Func<double, Deviation> InOther);

/// <summary>The uncertain inputs of a set, independent of each other.</summary>
internal static class Inputs
{
    /// <param name="set">The set that is asked about.</param>
    /// <param name="other">The set of the measured run that ties the model, or the one that a change is counted from; null: none.</param>
    /// <param name="frictionTold">True where the run tells the belt's friction and leaves no doubt of it.</param>
    /// <param name="torqueShare">Limit of the engine's torque.</param>
    /// <param name="misfit">True where the model misses the run that ties it.</param>
    public static IReadOnlyList<UncertainInput> Of(SetUp set, SetUp? other, bool frictionTold, double torqueShare, bool misfit)
    {
        List<UncertainInput> inputs =
        [
            Common("engine torque", t => new Deviation { TorqueShare = t * torqueShare }),
        ];
        if (!frictionTold)
            inputs.Add(Common("belt friction", t => new Deviation { Friction = t * InputTolerances.Friction }));
        Add(DriveSpring(set), set.DriveSpring.Id == other?.DriveSpring.Id, other is null ? [] : DriveSpring(other));
        Add(Flyweight, set.Flyweight.Body.Id == other?.Flyweight.Body.Id, other is null ? [] : Flyweight);
        Add(DrivenSpring(set), set.Driven.Spring.Id == other?.Driven.Spring.Id, other is null ? [] : DrivenSpring(other));
        if (misfit)
            inputs.Add(new UncertainInput("misfit of the run", t => new Deviation { Misfit = t * Response.LimitInU }, Nothing));
        return inputs;

        void Add((string Name, Func<double, Deviation> Of)[] own, bool same, (string Name, Func<double, Deviation> Of)[] ofOther)
        {
            inputs.AddRange(own.Select(i => same ? Common(i.Name, i.Of) : new UncertainInput(i.Name, i.Of, Nothing)));
            if (!same)
                inputs.AddRange(ofOther.Select(i => new UncertainInput($"{i.Name} in the other set", Nothing, i.Of)));
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
            InputTolerances.TwistRad(set.Driven.Spring) is { } twist
                ? ("driven spring torque", t => new Deviation { PreloadTwist = t * twist })
                : ("driven spring twist rate", t => new Deviation { TwistRateShare = t * limit.RateShare }),
        ];
    }
}
