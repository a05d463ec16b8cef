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
    ];

    /// <summary>Inside diameter at rest: stated, or outside diameter less two wires.</summary>
    public static double? InsideAtRest(DrivenSpring spring) => spring.InsideDiameter?.Meters
        ?? (spring.OutsideDiameter is { } outside && spring.WireDiameter is { } wire
            ? outside.Meters - 2 * wire.Meters
            : null);

    private static FitCheck Known(DrivenSpring spring, MachineModel machine)
    {
        return SpringModels.Axial(spring) is not null && SpringModels.Twist(spring) is not null
            ? FitCheck.Holds
            : FitCheck.AtLeast(0, 1, null, 0,
                "its compression or its twist is not known: give twist rate or two torques, and free length with rate "
                + "or load, or the geometry");
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
            return FitCheck.NotChecked("hub diameter of the clutch");
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
        new("driven-spring-twist-range", "A measured torque table must reach from the hole's twist to full shift.", true, TwistRange),
        new("driven-spring-wound", "The hole must wind the spring up: a torque below zero is none.", true, Wound),
        new("driven-spring-wound-diameter", "Wound up at full shift, the spring must still clear the hub.", false, WoundDiameter),
    ];

    private static FitCheck TwistRange(DrivenChoice choice, MachineModel machine)
    {
        if (choice.Spring.TorqueTable is null || SpringModels.Twist(choice.Spring) is not { } twist)
            return FitCheck.Holds;
        double full = FullTwist(choice, machine);
        return FitCheck
            .AtLeast(choice.PreloadTwist, twist.From, UnitsNet.Angle.Info, AngleRad,
                $"its torque is known from {Words.Degrees(twist.From)}; "
                + $"the hole gives {Words.Degrees(choice.PreloadTwist)}")
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

        double torque = twist.At(choice.PreloadTwist);
        return FitCheck.AtLeast(torque, 0, UnitsNet.Torque.Info, TorqueNm,
            $"the line through its two torques is at {Words.Torque(torque)} in this hole: it would not be wound up");
    }

    private static FitCheck WoundDiameter(DrivenChoice choice, MachineModel machine)
    {
        if (machine.Profile.DrivenClutch.HubDiameter is not { } hub)
            return FitCheck.NotChecked("hub diameter of the clutch");
        if (DrivenSpringRules.InsideAtRest(choice.Spring) is not { } atRest
            || choice.Spring.WireDiameter is not { } wire
            || choice.Spring.ActiveCoils is not { } active)
        {
            return FitCheck.NotChecked("inside diameter, wire diameter and active coils");
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
        choice.PreloadTwist + HelixRules.Cam(choice.Helix, machine).Turn(machine.FullShift.OpeningTravel);
}
