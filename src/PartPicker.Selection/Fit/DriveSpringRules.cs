using PartPicker.Parts;
using static PartPicker.Selection.FitTolerance;
using QuantityLength = UnitsNet.Length;

namespace PartPicker.Selection;

/// <summary>What a drive spring must keep.</summary>
internal static class DriveSpringRules
{
    public static readonly IReadOnlyList<FitRule<DriveSpring>> All =
    [
        new("drive-spring-known", "The spring must be known in one whole way: table, two loads, rate or geometry.", true, Known),
        new("drive-spring-free-length", "The spring must still push with the clutch at rest.", true, FreeLength),
        new("drive-spring-measured-range", "A measured table must reach from rest to full shift; nothing is guessed beyond it.", true, MeasuredRange),
        new("drive-spring-solid-length", "Solid length and coil clearance must leave room at full shift.", true, SolidLength, NamedWhenUnknown: true),
        new("drive-spring-coil-clearance", "The coil clearance must be known to be kept.", false, CoilClearance),
        new("drive-spring-outside-diameter", "Grown at full shift where its coils are known, the spring must run free in the cup.", false, OutsideDiameter),
        new("drive-spring-inside-diameter", "The spring must run free on the post.", false, InsideDiameter),
        new("drive-spring-stress", "Shear stress at full shift must stay below the share of tensile strength that the wire bears for good.", false, SpringStressRules.DriveShear, NamedWhenUnknown: true),
        new("drive-spring-buckling", "Alone between its seats, held as the clutch states, the spring must not bow out: post and cup would only rub.", false, SpringStressRules.DriveBuckling),
        new("drive-spring-seat", "The ends must sit: ground ends on a flat seat, others on a stepped one.", false, Seat),
    ];

    private static FitCheck Known(DriveSpring spring, MachineModel machine) => FitCheck.Word(
        SpringModels.Force(spring) is not null,
        "nothing whole is known of its force: give rate and free length, two loads, a table, or the geometry");

    private static FitCheck FreeLength(DriveSpring spring, MachineModel machine)
    {
        double installed = machine.Drivetrain.DriveSpringLength;
        if (SpringModels.Force(spring) is not { } force)
            return FitCheck.NotChecked("its force");
        if (spring.LoadTable is null)
        {
            return FitCheck.AtLeast(force.To, installed, QuantityLength.Info, -LengthM,
                $"free length {Words.Length(force.To)} does not exceed the installed length {Words.Length(installed)}: "
                + "it is loose at rest");
        }

        if (force.From > installed || force.To - installed < -LengthM)
            return FitCheck.NotChecked("its load at rest");
        double load = force.At(Math.Min(installed, force.To));
        return FitCheck.AtLeast(load, 0, UnitsNet.Force.Info, -ForceN,
            $"its table has {Words.Force(load)} at the installed length {Words.Length(installed)}: it is loose at rest");
    }

    private static FitCheck MeasuredRange(DriveSpring spring, MachineModel machine)
    {
        if (spring.LoadTable is null || SpringModels.Force(spring) is not { } force)
            return FitCheck.Holds;
        double installed = machine.Drivetrain.DriveSpringLength;
        double shortest = machine.ShortestDriveSpring;
        return FitCheck
            .AtLeast(force.To, installed, QuantityLength.Info, LengthM,
                $"its table ends at {Words.Length(force.To)}, but at rest it is {Words.Length(installed)} long")
            .And(FitCheck.AtMost(force.From, shortest, QuantityLength.Info, LengthM,
                $"its table starts at {Words.Length(force.From)}, but full shift needs {Words.Length(shortest)}"));
    }

    private static FitCheck SolidLength(DriveSpring spring, MachineModel machine)
    {
        if (SpringModels.SolidLength(spring) is not { } solid)
            return FitCheck.NotChecked("solid length");
        double clearance = SpringModels.CoilClearance(spring)?.Meters ?? 0;
        double needed = solid.Meters + clearance;
        double left = machine.ShortestDriveSpring;
        return FitCheck.AtMost(needed, left, QuantityLength.Info, LengthM,
            $"solid length with coil clearance {Words.Length(needed)} exceeds the {Words.Length(left)} left at full shift");
    }

    private static FitCheck CoilClearance(DriveSpring spring, MachineModel machine) =>
        SpringModels.SolidLength(spring) is null || SpringModels.CoilClearance(spring) is not null
            ? FitCheck.Holds
            : FitCheck.NotChecked(
                ("wire diameter", spring.WireDiameter is not null),
                ("outside diameter", spring.OutsideDiameter is not null),
                ("active coils", spring.ActiveCoils is not null));

    private static FitCheck OutsideDiameter(DriveSpring spring, MachineModel machine)
    {
        if (machine.Profile.DriveClutch.CupBore is not { } bore)
            return FitCheck.NotStated(machine.Profile.DriveClutch, "cupBore", "cup bore of the clutch");
        if (spring.OutsideDiameter is not { } outside)
            return FitCheck.NotChecked("outside diameter");
        double? grown = SpringStressRules.GrownOutside(spring, machine);
        double needed = grown ?? outside.Meters;
        return FitCheck.AtMost(needed, bore.Meters, QuantityLength.Info, LengthM,
            $"outside diameter {Words.Length(needed)}{(grown is null ? "" : " at full shift")} exceeds the cup bore "
            + Words.Length(bore.Meters));
    }

    private static FitCheck Seat(DriveSpring spring, MachineModel machine)
    {
        if (machine.Profile.DriveClutch.SpringSeat is not { } seat)
            return FitCheck.NotStated(machine.Profile.DriveClutch, "springSeat", "spring seat of the clutch");
        if (spring.Ends is not { } ends)
            return FitCheck.NotChecked("kind of ends");
        bool ground = ends is SpringEnds.OpenGround or SpringEnds.ClosedGround;
        return FitCheck.Word(ground == (seat == SpringSeat.Flat),
            $"its ends are {(ground ? "ground" : "not ground")}, but the seat is {Words.Of(seat.ToString())}");
    }

    private static FitCheck InsideDiameter(DriveSpring spring, MachineModel machine)
    {
        if (machine.Profile.DriveClutch.PostDiameter is not { } post)
            return FitCheck.NotStated(machine.Profile.DriveClutch, "postDiameter", "post diameter of the clutch");
        if (spring.OutsideDiameter is not { } outside || spring.WireDiameter is not { } wire)
        {
            return FitCheck.NotChecked(
                ("outside diameter", spring.OutsideDiameter is not null), ("wire diameter", spring.WireDiameter is not null));
        }

        double inside = outside.Meters - 2 * wire.Meters;
        return FitCheck.AtLeast(inside, post.Meters, QuantityLength.Info, LengthM,
            $"inside diameter {Words.Length(inside)} does not clear the post {Words.Length(post.Meters)}");
    }
}
