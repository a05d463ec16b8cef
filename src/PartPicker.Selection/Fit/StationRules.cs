using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What a flyweight with its masses in their stations must keep.</summary>
internal static class StationRules
{
    public static readonly IReadOnlyList<FitRule<FlyweightChoice>> All =
    [
        new("flyweight-station-mass", "No station may carry more than its supplier allows; where no limit is stated, the masses that are listed for it are the limit.", false, StationMass),
    ];

    private static FitCheck StationMass(FlyweightChoice choice, MachineModel machine)
    {
        MassStation[] limited = [.. choice.Body.Stations().Where(s => s.MassLimit is not null)];
        if (limited.Length == 0)
            return FitCheck.Holds;
        MassStation tightest = limited.MinBy(s => s.MassLimit!.Value.Kilograms - choice.Masses.GetValueOrDefault(s.Name))!;
        double mass = choice.Masses.GetValueOrDefault(tightest.Name);
        double limit = tightest.MassLimit!.Value.Kilograms;
        return FitCheck.AtMost(mass, limit, UnitsNet.Mass.Info, MassStation.MassToleranceKg,
            $"its {Words.Camel($"{tightest.Name}")} station carries {Words.Grams(mass)}; its supplier allows {Words.Grams(limit)}");
    }
}
