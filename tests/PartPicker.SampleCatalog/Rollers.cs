namespace PartPicker.SampleCatalog;

/// <summary>Sliding rollers of the scooter: grams alone, since their path is the clutch's.</summary>
internal static class Rollers
{
    private const int Count = 5;
    private const int Pieces = 6;
    private static readonly Listing Listing = new("harbour-drive", 2016, null);

    public static IEnumerable<SamplePart> Make(int seed, int scale)
    {
        var random = new SampleRandom(seed, "rollers");
        for (int i = 0; i < Count * scale; i++)
        {
            Row row = Draw(random, i);
            yield return new SamplePart(row, random.Between(3.5, 6) * double.Parse(row.Cells["packQuantity"]));
        }
    }

    private static Row Draw(SampleRandom random, int index)
    {
        double mass = random.Whole(22, 33) / 2.0;
        bool small = random.OneIn(6);
        var row = new Row();
        row["id"] = $"fw-rollers-{index + 1:000}";
        row["name"] = $"Roller of {mass:0.#} g of the harbour class";
        Packs.On(row, random, Pieces);
        if (!small)
            Listing.On(row, random);
        row.Set("bodyMass [g]", mass);
        row["rollerDiameter"] = small ? "18 mm" : "20 mm";
        row.Set("setCount", Pieces);
        row["armProfile"] = "harbour-roller-path";
        return row;
    }
}
