using PartPicker.Mechanics;
using PartPicker.Parts;
using static PartPicker.Selection.FitTolerance;
using QuantityLength = UnitsNet.Length;

namespace PartPicker.Selection;

/// <summary>What a driven spring must keep, whichever hole and helix it meets.</summary>
internal static class DrivenSpringRules
{
    public static readonly IReadOnlyList<FitRule<DrivenSpring>> All =
    [
        new("driven-spring-known", "Compression and twist must each be known in one whole way.", true, Known),
        new("driven-spring-free-length", "The spring must not be stretched in low gear.", true, FreeLength),
        new("driven-spring-measured-range", "A measured load table must reach from low gear to full shift.", true, MeasuredRange),
        new("driven-spring-inside-diameter", "The spring must clear the hub before it is twisted.", false, InsideDiameter),
        new("driven-spring-winding-hand", "The spring must be wound the way that the clutch twists it.", false, WindingHand),
        new("driven-spring-legs", "The ends must take hold in the holes of the clutch.", false, Legs),
    ];

    /// <summary>Inside diameter at rest: stated, or outside diameter less two wires.</summary>
    public static double? InsideAtRest(DrivenSpring spring) => spring.InsideDiameter?.Meters
        ?? (spring.OutsideDiameter is { } outside && spring.WireDiameter is { } wire
            ? outside.Meters - 2 * wire.Meters
            : null);

    /// <summary>True when all is known that a clutch of this family asks of the spring.</summary>
    public static bool ForceAndTwistKnown(DrivenSpring spring, DrivenFamily family) =>
        SpringModels.Axial(spring) is not null
        && (family == DrivenFamily.CompressionOnly || SpringModels.Twist(spring) is not null);

    private static FitCheck Known(DrivenSpring spring, MachineModel machine) => FitCheck.Word(
        ForceAndTwistKnown(spring, machine.Profile.DrivenClutch.Family),
        "its compression or its twist is not known: give free length with rate or load, and twist rate or two torques, or "
        + "the geometry");

    private static FitCheck WindingHand(DrivenSpring spring, MachineModel machine)
    {
        if (machine.Profile.DrivenClutch.Family == DrivenFamily.CompressionOnly)
            return FitCheck.Holds;
        if (machine.Profile.DrivenClutch.WindingHand is not { } wanted)
            return FitCheck.NotStated(machine.Profile.DrivenClutch, "windingHand", "winding hand of the clutch");
        if (spring.WindingHand is not { } has)
            return FitCheck.NotChecked("winding hand");
        return FitCheck.Word(has == wanted, $"it is wound to the {Words.Of(has.ToString())}; the clutch takes {Words.Of(wanted.ToString())}");
    }

    private static FitCheck Legs(DrivenSpring spring, MachineModel machine)
    {
        if (machine.Profile.DrivenClutch.Legs is not { } wanted)
            return FitCheck.NotStated(machine.Profile.DrivenClutch, "legs", "kind of legs that the clutch takes");
        if (spring.Legs is not { } has)
            return FitCheck.NotChecked("kind of legs");
        return FitCheck.Word(has == wanted, $"its legs are {Words.Of(has.ToString())}; the clutch takes {Words.Of(wanted.ToString())}");
    }

    private static FitCheck FreeLength(DrivenSpring spring, MachineModel machine)
    {
        double installed = machine.Drivetrain.DrivenSpringLength;
        if (SpringModels.Axial(spring) is not { } axial)
            return FitCheck.NotChecked("its compression");
        string what = spring.LoadTable is null ? "free length" : "last length of its table";
        return FitCheck.AtLeast(axial.To, installed, QuantityLength.Info, LengthM,
            $"{what} {Words.Length(axial.To)} is below the installed length {Words.Length(installed)}");
    }

    private static FitCheck MeasuredRange(DrivenSpring spring, MachineModel machine)
    {
        if (spring.LoadTable is null || SpringModels.Axial(spring) is not { } axial)
            return FitCheck.Holds;
        double shortest = machine.ShortestDrivenSpring;
        return FitCheck.AtMost(axial.From, shortest, QuantityLength.Info, LengthM,
            $"its load is known from {Words.Length(axial.From)}, but full shift needs {Words.Length(shortest)}");
    }

    private static FitCheck InsideDiameter(DrivenSpring spring, MachineModel machine)
    {
        if (machine.Profile.DrivenClutch.HubDiameter is not { } hub)
            return FitCheck.NotStated(machine.Profile.DrivenClutch, "hubDiameter", "hub diameter of the clutch");
        if (InsideAtRest(spring) is not { } inside)
            return FitCheck.NotChecked("inside diameter");
        return FitCheck.AtLeast(inside, hub.Meters, QuantityLength.Info, LengthM,
            $"inside diameter {Words.Length(inside)} does not clear the hub {Words.Length(hub.Meters)}");
    }
}

/// <summary>What a driven spring must keep in one hole with one helix.</summary>
internal static class DrivenSideRules
{
    public static readonly IReadOnlyList<FitRule<DrivenChoice>> All =
    [
        new("driven-spring-preload", "Hole and legs together must not unwind the spring.", true, Preload),
        new("driven-spring-twist-range", "A measured torque table must reach from the hole's twist to full shift.", true, TwistRange),
        new("driven-spring-wound", "The hole must wind the spring up: a torque below zero is none.", true, Wound),
        new("driven-spring-wound-diameter", "Wound up at full shift, the spring must still clear the hub.", false, WoundDiameter),
        new("driven-spring-twist-limit", "Full shift must not twist the spring beyond what its supplier allows or, where nothing is stated, what its wire bears in bending.", false, TwistLimit, NamedWhenUnknown: true),
        new("driven-spring-combined-stress", "Twist and push together must not stress the wire at full shift beyond what it bears.", false, CombinedStress, NamedWhenUnknown: true),
        new("driven-spring-solid-length", "Body and legs, wound up, must leave room at full shift.", false, SolidLength, NamedWhenUnknown: true),
    ];

    /// <summary>The holes, or settings, in which this spring with this helix breaks none of these rules.</summary>
    public static IReadOnlyList<SpringHole> Holes(DrivenChoice choice, MachineModel machine) =>
        [.. machine.Profile.DrivenClutch.TwistChoices().Where(hole => Fits(choice with { Hole = hole }, machine))];

    /// <summary>True where none of these rules is broken.</summary>
    public static bool Fits(DrivenChoice choice, MachineModel machine) =>
        All.All(r => r.Check(choice, machine).Verdict != FitVerdict.Broken);

    private static FitCheck Preload(DrivenChoice choice, MachineModel machine) =>
        machine.Profile.DrivenClutch.Family == DrivenFamily.CompressionOnly
            ? FitCheck.Holds
            : FitCheck.AtLeast(choice.PreloadTwist, 0, UnitsNet.Angle.Info, AngleRad,
                $"{Words.Of(choice.Hole, machine)} with the offset of its legs gives {Words.Degrees(choice.PreloadTwist)}: it would be unwound");

    private static FitCheck TwistRange(DrivenChoice choice, MachineModel machine)
    {
        if (choice.Spring.TorqueTable is null || SpringModels.Twist(choice, machine) is not { } twist)
            return FitCheck.Holds;
        double full = FullTwist(choice, machine);
        return FitCheck
            .AtLeast(choice.PreloadTwist, twist.From, UnitsNet.Angle.Info, AngleRad,
                $"its torque is known from {Words.Degrees(twist.From)}; "
                + $"{Words.Of(choice.Hole, machine)} gives {Words.Degrees(choice.PreloadTwist)}")
            .And(FitCheck.AtMost(full, twist.To, UnitsNet.Angle.Info, AngleRad,
                $"its torque is known to {Words.Degrees(twist.To)}; full shift twists it to {Words.Degrees(full)}"));
    }

    private static FitCheck Wound(DrivenChoice choice, MachineModel machine)
    {
        // Only the line through two torques can pass below zero.
        if (!choice.Spring.KnownByTwoTorques || choice.Spring.TorqueTable is not null
            || SpringModels.Twist(choice.Spring) is not { } twist)
        {
            return FitCheck.Holds;
        }

        double torque = twist.At(Math.Max(twist.From, choice.PreloadTwist));
        return FitCheck.AtLeast(torque, 0, UnitsNet.Torque.Info, TorqueNm,
            $"the line through its two torques is at {Words.Torque(torque)} in {Words.Of(choice.Hole, machine)}: it would not be wound up");
    }

    private static FitCheck TwistLimit(DrivenChoice choice, MachineModel machine)
    {
        if (machine.Profile.DrivenClutch.Family == DrivenFamily.CompressionOnly)
            return FitCheck.Holds;
        double full = FullTwist(choice, machine);
        if (choice.Spring.TwistLimitDeg is not { } limitDeg)
            return SpringStressRules.DrivenBending(choice, machine, full);
        double limit = limitDeg * (Math.PI / 180);
        return FitCheck.AtMost(full, limit, UnitsNet.Angle.Info, AngleRad,
            $"full shift twists it to {Words.Degrees(full)}; its supplier allows {Words.Degrees(limit)}");
    }

    private static FitCheck CombinedStress(DrivenChoice choice, MachineModel machine) =>
        SpringStressRules.DrivenCombined(choice, machine, FullTwist(choice, machine));

    private static FitCheck SolidLength(DrivenChoice choice, MachineModel machine)
    {
        double? body = choice.Spring.BodyCoils ?? choice.Spring.ActiveCoils;
        if (choice.Spring.WireDiameter is not { } wire || (choice.Spring.SolidLength is null && body is null))
        {
            return FitCheck.NotChecked(
                ("wire diameter", choice.Spring.WireDiameter is not null),
                ("solid length or body coils", choice.Spring.SolidLength is not null || body is not null));
        }

        // Each turn of twist adds a coil to the body: d (N_b + 1 + θ).
        double turns = FullTwist(choice, machine) / (2 * Math.PI);
        double solid = choice.Spring.SolidLength is { } atRest
            ? atRest.Meters + wire.Meters * turns
            : TorsionSpring.WoundSolidLength(wire, body!.Value, turns).Meters;
        double left = machine.ShortestDrivenSpring;
        return FitCheck.AtMost(solid, left, QuantityLength.Info, LengthM,
            $"wound up it is solid at {Words.Length(solid)}; full shift leaves {Words.Length(left)}");
    }

    private static FitCheck WoundDiameter(DrivenChoice choice, MachineModel machine)
    {
        if (machine.Profile.DrivenClutch.HubDiameter is not { } hub)
            return FitCheck.NotStated(machine.Profile.DrivenClutch, "hubDiameter", "hub diameter of the clutch");
        if (DrivenSpringRules.InsideAtRest(choice.Spring) is not { } atRest
            || choice.Spring.WireDiameter is not { } wire
            || choice.Spring.ActiveCoils is not { } active)
        {
            return FitCheck.NotChecked(
                ("inside diameter", choice.Spring.InsideDiameter is not null || choice.Spring.OutsideDiameter is not null),
                ("wire diameter", choice.Spring.WireDiameter is not null),
                ("active coils", choice.Spring.ActiveCoils is not null));
        }

        double body = choice.Spring.BodyCoils ?? active;
        double bodyTurns = FullTwist(choice, machine) / (2 * Math.PI) * body / active;
        QuantityLength mean = TorsionSpring.WoundMeanDiameter(
            QuantityLength.FromMeters(atRest + wire.Meters), body, bodyTurns);
        double wound = mean.Meters - wire.Meters;
        return FitCheck.AtLeast(wound, hub.Meters, QuantityLength.Info, LengthM,
            $"wound up at full shift its inside diameter {Words.Length(wound)} does not clear the hub "
            + $"{Words.Length(hub.Meters)}");
    }

    /// <summary>ψ₀ + Θ at full shift (rad).</summary>
    private static double FullTwist(DrivenChoice choice, MachineModel machine) =>
        choice.PreloadTwist + machine.WholeTurn(choice.Helix);
}
