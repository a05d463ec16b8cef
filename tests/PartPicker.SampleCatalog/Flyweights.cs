namespace PartPicker.SampleCatalog;

/// <summary>Arms that are made for one drive clutch; lengths in millimetres, masses in grams.</summary>
/// <param name="Key">Names the class, and its stream of draws.</param>
/// <param name="Count">Rows in the committed catalog.</param>
/// <param name="Listing">Null for a clutch that no machine of the catalog has.</param>
/// <param name="ArmLength">Pin to tip.</param>
/// <param name="PinBore">Of the pin that it swings on.</param>
/// <param name="Arms">Arms in a set.</param>
/// <param name="Body">Mass of one arm with stations.</param>
/// <param name="Tip">Farthest from the shaft.</param>
/// <param name="Paths">Radii of the body and its stations.</param>
/// <param name="Profile">An arm profile that bodies of grams alone have; null: none.</param>
/// <param name="Reference">An arm that others are weighed against; null: none.</param>
internal sealed record Flyweights(
    string Key, int Count, Listing? Listing, double ArmLength, double PinBore, int Arms, Span Body, Span Tip,
    ArmPaths Paths, string? Profile = null, string? Reference = null)
{
    private static readonly string[] Holdings = ["screw", "rivet", "magnet"];

    public static readonly IReadOnlyList<Flyweights> All =
    [
        new("canyon", 4, new("canyon-drive", 2019, null), 61, 8, 4, new(39, 47), new(95, 101), ArmPaths.Canyon,
            Profile: "canyon-path", Reference: "fw-canyon-44"),
        new("ridge", 1, new("ridge-drive", 2014, 2023), 55, 9, 3, new(38, 44), new(86, 89), ArmPaths.Ridge),
        new("tour", 4, null, 72, 10, 4, new(56, 74), new(116, 122), ArmPaths.Canyon.Grown(1.2),
            Reference: "fw-canyon-44"),
        new("stub", 3, null, 49, 7, 3, new(34, 44), new(74, 78), ArmPaths.Ridge.Grown(0.9)),
    ];

    public IEnumerable<SamplePart> Make(int seed, int scale)
    {
        var random = new SampleRandom(seed, $"flyweights/{Key}");
        for (int i = 0; i < Count * scale; i++)
        {
            Row row = Draw(random, i);
            yield return new SamplePart(row, random.Between(18, 32) * double.Parse(row.Cells["packQuantity"]));
        }
    }

    private Row Draw(SampleRandom random, int index)
    {
        double mass = Math.Round(random.In(Body) * 2) / 2;
        var style = new UnitStyle(inch: random.OneIn(3));
        var row = new Row();
        row["id"] = $"fw-{Key}-{index + 1:000}";
        row["name"] = $"Arm of {mass:0.#} g of the {Key} class";
        Packs.On(row, random, Arms);
        Listing?.On(row, random);
        row.Set("armLength", style.FineLength(ArmLength * UnitStyle.Mm));
        row.Set("pinBore", style.FineLength(PinBore * UnitStyle.Mm));
        row.Set("tipRadius", style.Length(random.In(Tip) * UnitStyle.Mm));
        row.Set("setCount", Arms);
        double factor = random.Between(0.99, 1.012);
        switch (index % 4)
        {
            case 0 when Profile is not null:
                row["name"] = $"Arm of {mass:0.#} g of the {Key} class, its path by the profile";
                row.Set("bodyMass [g]", mass);
                row["armProfile"] = Profile;
                Station(row, random, "tip", 4, 7);
                break;
            case 1 when Reference is not null:
                double over = random.Pick([-4.5, -3, -2, -1.5, 1.5, 2, 3.5, 5]);
                row["name"] = $"Arm of the {Key} class, weighed against another";
                row["referenceArm"] = Reference;
                row.Set("massOverReference", UnitStyle.Grams(over, 0.5));
                break;
            case 2:
                row["name"] = $"Arm of {mass + 10:0.#} g of the {Key} class, in one piece";
                row.Set("bodyMass [g]", mass + 10);
                row["radiusCurve"] = Paths.Body.Bent(factor).Cell();
                break;
            default:
                row.Set("bodyMass [g]", mass);
                row["radiusCurve"] = Paths.Body.Bent(factor).Cell();
                row["tipCurve"] = Paths.Tip.Bent(factor).Cell();
                Station(row, random, "tip", 4, 7);
                if (random.OneIn(2))
                {
                    row["heelCurve"] = Paths.Heel.Bent(factor).Cell();
                    Station(row, random, "heel", 0, 1);
                }

                break;
        }

        return row;
    }

    /// <summary>Two or three masses for a station, and mostly how they are held.</summary>
    private static void Station(Row row, SampleRandom random, string name, int least, int greatest)
    {
        double first = random.Whole(least, greatest);
        double step = random.Pick([2, 2.5, 3]);
        double[] masses = [.. Enumerable.Range(0, random.Whole(2, 3)).Select(i => first + i * step)];
        row[$"{name}Masses"] = Points.Grams(masses);
        if (random.OneIn(4))
            return;
        row[$"{name}Holding"] = random.Pick(Holdings);
        row.Set($"{name}MassLimit", UnitStyle.Grams(masses[^1] + random.Whole(0, 2), 0.5));
    }
}

/// <summary>Radii over sheave travel, in millimetres.</summary>
internal sealed record ArmPaths(
    (double X, double Y)[] Body, (double X, double Y)[] Heel, (double X, double Y)[] Tip)
{
    public static readonly ArmPaths Canyon = new(
        [(0, 43), (3, 47), (6, 50.6), (9, 53.8), (12, 56.8), (15, 59.6), (18, 62.2), (22, 65.5), (27, 69.4)],
        [(0, 38), (7, 44.6), (14, 50.4), (21, 55.2), (28, 59.2)],
        [(0, 47), (7, 60), (14, 71.2), (21, 81), (28, 90)]);

    public static readonly ArmPaths Ridge = new(
        [
            (0, 36.5), (2.5, 40.15), (5, 43.35), (8, 46.8), (11, 49.9), (14, 52.75), (17, 55.35), (20, 57.85),
            (23.5, 60.6),
        ],
        [(0, 33), (6, 38.2), (12, 43), (18, 47.4), (24, 51.2)],
        [(0, 40.4), (6, 51.6), (12, 61.1), (18, 69.2), (24, 76.4)]);

    public ArmPaths Grown(double factor) => new(Body.Bent(factor), Heel.Bent(factor), Tip.Bent(factor));
}

/// <summary>How a set of arms or rollers is packed.</summary>
internal static class Packs
{
    public static void On(Row row, SampleRandom random, int pieces)
    {
        int pack = random.OneIn(4) && pieces % 2 == 0 ? 2 : random.OneIn(6) ? 1 : pieces;
        row["soldAs"] = pack == 2 ? "pair" : pack == 1 ? "each" : "set";
        row.Set("packQuantity", pack);
    }
}
