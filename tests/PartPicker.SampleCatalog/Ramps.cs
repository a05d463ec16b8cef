namespace PartPicker.SampleCatalog;

/// <summary>Adjustable ramps of the farm machine: a path for each step, and pins of several masses.</summary>
internal static class Ramps
{
    private const int Count = 4;
    private static readonly Listing Listing = new("meadow-drive", 2012, 2020);

    private static readonly (double X, double Y)[] Path =
        [(0, 30), (2, 33), (5, 37.2), (8, 41), (11, 44.5), (14, 47.8), (17, 50.9), (21, 54.7)];

    public static IEnumerable<SamplePart> Make(int seed, int scale)
    {
        var random = new SampleRandom(seed, "ramps");
        for (int i = 0; i < Count * scale; i++)
            yield return new SamplePart(Draw(random, i), random.Between(80, 130));
    }

    private static Row Draw(SampleRandom random, int index)
    {
        double mass = random.Whole(33, 42);
        int steps = random.Whole(3, 4);
        double factor = random.Between(0.99, 1.01);
        double tilt = random.Between(0.035, 0.07);
        double pin = random.Whole(5, 7);
        var row = new Row();
        row["id"] = $"fw-ramp-{index + 1:000}";
        row["name"] = $"Ramp of {mass} g with {steps} steps of the meadow class";
        row["soldAs"] = "set";
        row.Set("packQuantity", 4);
        Listing.On(row, random);
        row.Set("bodyMass [g]", mass);
        row["armLength"] = "42 mm";
        row["pinBore"] = "6 mm";
        var style = new UnitStyle(inch: random.OneIn(3));
        row.Set("tipRadius", style.Length(random.Between(64, 68) * UnitStyle.Mm));
        row.Set("setCount", 4);
        row["adjusterCurves"] = string.Join(" | ", Enumerable.Range(1, steps).Select(
            step => $"{step} = {Path.Bent(factor, (step - 2) * tilt).Cell()}"));
        row["pinMasses"] = Points.Grams([pin, pin + 2, pin + 4]);
        return row;
    }
}
