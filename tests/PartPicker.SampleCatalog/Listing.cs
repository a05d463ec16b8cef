namespace PartPicker.SampleCatalog;

/// <summary>A clutch of a machine file, and its model-years: what suppliers list a part for.</summary>
internal sealed record Listing(string ClutchId, int FromYear, int? ToYear)
{
    /// <summary>Three suppliers of four list the clutch, and one of those from a later year on.</summary>
    public void On(Row row, SampleRandom random)
    {
        if (random.OneIn(4))
            return;
        int from = random.OneIn(4) ? FromYear + random.Whole(1, 3) : FromYear;
        row["fitsClutches"] = $"{ClutchId} {from}-{ToYear}";
    }
}
