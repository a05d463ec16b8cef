namespace PartPicker.SampleCatalog;

/// <summary>What an outlet asks for generated parts, and how many packs it has.</summary>
/// <param name="File">Its file; the name is the id of the outlet.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="PerEuro">Its prices over those in euro.</param>
/// <param name="OneMissingIn">One part of so many is not in its list.</param>
internal sealed record Outlets(string File, string Currency, double PerEuro, int OneMissingIn)
{
    public static readonly IReadOnlyList<Outlets> All =
    [
        new("outlets/valley-counter.csv", "EUR", 1, 6),
        new("outlets/quay-stores.csv", "USD", 1.12, 4),
    ];

    public CsvFile Make(int seed, IEnumerable<SamplePart> parts)
    {
        var random = new SampleRandom(seed, File);
        var file = new CsvFile(File);
        foreach (SamplePart part in parts)
        {
            if (random.OneIn(OneMissingIn))
                continue;
            var row = new Row();
            row["partId"] = part.Id;
            row["currency"] = Currency;
            if (!random.OneIn(15))
                row.Set("priceMinor", Math.Round(part.Euro * PerEuro * random.Between(0.95, 1.1) * 2) * 50 - 10);
            if (!random.OneIn(9))
                row.Set("stock", random.OneIn(7) || part.Replaced ? 0 : random.Whole(1, 8));
            file.Add(row);
        }

        return file;
    }
}
