namespace PartPicker.Selection;

/// <summary>One for each check that could not be made though a break may do harm.</summary>
internal static class GapCautions
{
    public static IEnumerable<Caution> For(SetUp set, MachineModel machine) =>
        from gap in SetRules.Of(set, machine)
        where gap.MayBreak && gap.Check.Verdict == FitVerdict.NotChecked
        let missing = $"Not known of the {Words.Of(gap.Slot)} {gap.Part}: {gap.Check.Sentence}"
        select gap.Listed
            ? new Caution(CautionWriter.Notice, $"{missing}; so rule {gap.Rule} stands on the word of its supplier alone.")
            : new Caution(CautionWriter.Careful, $"{missing}; so rule {gap.Rule} could not be checked. {Remedy(gap.Check)} before you fit it.");

    private static string Remedy(FitCheck check) => check.Remedy.Length > 0
        ? $"{char.ToUpperInvariant(check.Remedy[0])}{check.Remedy[1..]}"
        : "Measure it or ask the supplier";
}
