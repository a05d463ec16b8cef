namespace PartPicker.SampleCatalog;

/// <summary>The CSV files of the sample catalog. Everything in them is invented, and plausible.</summary>
public static class SampleFiles
{
    /// <summary>Every file, rows made by hand first.</summary>
    /// <param name="seed">Which parts are drawn; equal seeds give equal bytes.</param>
    /// <param name="scale">How many times as many generated rows as in the committed catalog.</param>
    public static IReadOnlyList<CsvFile> Make(int seed, int scale)
    {
        (string File, SamplePart[] Parts)[] generated =
        [
            ("drive-springs.csv", [.. DriveSprings.All.SelectMany(c => c.Make(seed, scale))]),
            ("flyweights.csv",
            [
                .. Flyweights.All.SelectMany(c => c.Make(seed, scale)),
                .. Ramps.Make(seed, scale),
                .. Rollers.Make(seed, scale),
            ]),
            ("driven-springs.csv", [.. DrivenSprings.All.SelectMany(c => c.Make(seed, scale))]),
            ("helices.csv", [.. Helices.All.SelectMany(c => c.Make(seed, scale))]),
        ];
        CsvFile[] parts =
        [
            .. generated.Select(g => With(new CsvFile(g.File), g.Parts)),
            .. new[] { "belts.csv", "shims.csv", "kits.csv", "labour.csv" }.Select(name => new CsvFile(name)),
        ];
        return [.. parts, .. Outlets.All.Select(o => o.Make(seed, generated.SelectMany(g => g.Parts)))];
    }

    private static CsvFile With(CsvFile file, SamplePart[] parts)
    {
        foreach (SamplePart part in parts)
            file.Add(part.Row);
        return file;
    }
}
