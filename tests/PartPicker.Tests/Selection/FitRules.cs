using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Tests.Selection;

/// <summary>One rule by its name, on the bench's own parts.</summary>
internal static class FitRules
{
    /// <summary>Every name, in the order of the rooms.</summary>
    public static IReadOnlyList<string> Names =>
    [
        .. DriveSpringRules.All.Select(r => r.Name),
        .. FlyweightRules.All.Select(r => r.Name),
        .. HelixRules.All.Select(r => r.Name),
        .. DrivenSpringRules.All.Select(r => r.Name),
        .. DrivenSideRules.All.Select(r => r.Name),
    ];

    public static FitCheck Check(string rule, Bench bench, string hole = "2")
    {
        MachineModel machine = bench.Model();
        SpringHole twist = bench.DrivenClutch.Holes.First(h => h.Name == hole);
        return Of(DriveSpringRules.All, bench.DriveSpring)
            ?? Of(FlyweightRules.All, bench.Flyweight)
            ?? Of(HelixRules.All, bench.Helix)
            ?? Of(DrivenSpringRules.All, bench.DrivenSpring)
            ?? Of(DrivenSideRules.All, new DrivenChoice(bench.DrivenSpring, twist, bench.Helix))
            ?? throw new ArgumentException($"No rule {rule}.");

        FitCheck? Of<T>(IReadOnlyList<FitRule<T>> rules, T candidate) =>
            rules.FirstOrDefault(r => r.Name == rule)?.Check(candidate, machine);
    }
}
