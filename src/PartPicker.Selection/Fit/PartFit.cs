using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Every rule of every part of one set, measured on one machine.</summary>
internal static class PartFit
{
    /// <summary>By how much each rule that could be checked is kept.</summary>
    public static IEnumerable<FitMargin> Margins(SetUp set, MachineModel machine) =>
    [
        .. FitReport.Margins(DriveSpringRules.All, set.DriveSpring, machine.OnShims(set.Spring.ShimThickness), Slot.DriveSpring, set.Spring.Label),
        .. set.Spring.Shim is { } shim ? FitReport.Margins(ShimRules.All, shim, machine, Slot.DriveSpring, shim.Id) : [],
        .. FitReport.Margins(FlyweightRules.All, set.Flyweight.Body, machine, Slot.Flyweight, set.Flyweight.Body.Id),
        .. FitReport.Margins(DrivenSpringRules.All, set.Driven.Spring, machine, Slot.DrivenSpring, set.Driven.Spring.Id),
        .. FitReport.Margins(DrivenSideRules.All, set.Driven, machine, Slot.DrivenSpring, set.Driven.Spring.Id),
        .. FitReport.Margins(HelixRules.All, set.Driven.Helix, machine, Slot.Helix, set.Driven.Helix.Id),
    ];

    /// <summary>The rules that could not be checked, and whether the supplier's list stands in.</summary>
    public static IEnumerable<FitGap> Gaps(SetUp set, MachineModel machine)
    {
        string drive = machine.Profile.DriveClutch.Id;
        string driven = machine.Profile.DrivenClutch.Id;
        return
        [
            .. FitReport.Gaps(DriveSpringRules.All, set.DriveSpring, machine.OnShims(set.Spring.ShimThickness), Slot.DriveSpring, set.Spring.Label, Listed(set.DriveSpring, drive)),
            .. set.Spring.Shim is { } shim
                ? FitReport.Gaps(ShimRules.All, shim, machine, Slot.DriveSpring, shim.Id, Listed(shim, drive))
                : [],
            .. FitReport.Gaps(FlyweightRules.All, set.Flyweight.Body, machine, Slot.Flyweight, set.Flyweight.Body.Id, Listed(set.Flyweight.Body, drive)),
            .. FitReport.Gaps(DrivenSpringRules.All, set.Driven.Spring, machine, Slot.DrivenSpring, set.Driven.Spring.Id, Listed(set.Driven.Spring, driven)),
            .. FitReport.Gaps(DrivenSideRules.All, set.Driven, machine, Slot.DrivenSpring, set.Driven.Spring.Id, Listed(set.Driven.Spring, driven)),
            .. FitReport.Gaps(HelixRules.All, set.Driven.Helix, machine, Slot.Helix, set.Driven.Helix.Id, Listed(set.Driven.Helix, driven)),
        ];

        bool Listed(Part part, string clutch) =>
            part.ListedFor(clutch, machine.Profile.Machine.FromYear, machine.Profile.Machine.ToYear);
    }
}
