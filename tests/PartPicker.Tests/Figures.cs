namespace PartPicker.Tests;

/// <summary>Figures worth reading after a run: one line a subject, kept where PART_PICKER_FIGURES names a folder.</summary>
internal static class Figures
{
    public static void Keep(string subject, FormattableString line)
    {
        if (Environment.GetEnvironmentVariable("PART_PICKER_FIGURES") is { Length: > 0 } folder)
            File.WriteAllText(Path.Combine(folder, $"{subject}.txt"), FormattableString.Invariant(line) + "\n");
    }
}
