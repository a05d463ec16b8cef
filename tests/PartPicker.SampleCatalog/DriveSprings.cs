using PartPicker.Mechanics;
using static PartPicker.SampleCatalog.UnitStyle;

namespace PartPicker.SampleCatalog;

/// <summary>Drive springs that are made for one drive clutch; lengths in millimetres.</summary>
/// <param name="Key">Names the class, and its stream of draws.</param>
/// <param name="Count">Rows in the committed catalog.</param>
/// <param name="Listing">Null for a clutch that no machine of the catalog has.</param>
/// <param name="Installed">Length with the clutch at rest.</param>
/// <param name="Shortest">Length at full shift.</param>
/// <param name="Outside">Outside diameter.</param>
/// <param name="Coils">Active coils.</param>
/// <param name="Rate">In N/mm.</param>
/// <param name="Preload">Load with the clutch at rest, in N.</param>
/// <param name="Ends">As the catalog names them.</param>
internal sealed record DriveSprings(
    string Key, int Count, Listing? Listing, double Installed, double Shortest,
    Span Outside, Span Coils, Span Rate, Span Preload, string Ends = "closedGround")
{
    private const int DeadCoils = 2;
    private const int WaysToKnow = 6;
    private const int WayOfTable = 3;
    private static readonly UnitStyle Bench = new(inch: false);
    private static readonly string[] Materials =
        ["chrome-silicon-a401", "chrome-vanadium-a232", "oil-tempered-a229", "music-wire-a228"];

    public static readonly IReadOnlyList<DriveSprings> All =
    [
        new("canyon", 22, new("canyon-drive", 2019, null), 76, 50, new(62.6, 65), new(3.5, 4.1), new(18.5, 25), new(380, 680)),
        new("meadow", 20, new("meadow-drive", 2012, 2020), 60, 40.5, new(45.5, 48.5), new(3.9, 4.7), new(10.5, 15), new(210, 370), "closed"),
        new("harbour", 16, new("harbour-drive", 2016, null), 34, 20.5, new(32.5, 36), new(2.6, 3.3), new(2.2, 4.2), new(22, 60)),
        new("ridge", 20, new("ridge-drive", 2014, 2023), 66, 43.5, new(45.6, 47.6), new(4.6, 5.2), new(14, 20), new(290, 500)),
        new("valley", 5, new("valley-drive", 2017, 2024), 72, 47.5, new(56.6, 58.4), new(2.9, 3.3), new(16.5, 21), new(390, 600)),
        new("plateau", 4, new("plateau-drive", 2015, 2022), 64, 36, new(67.6, 69.4), new(2.6, 2.9), new(24, 28), new(700, 950)),
        new("tour", 20, null, 88, 58, new(77, 81.5), new(3, 4), new(24, 34), new(700, 1200)),
        new("stub", 18, null, 48, 30, new(41, 43.5), new(3, 4), new(8, 13), new(150, 300)),
    ];

    public IEnumerable<SamplePart> Make(int seed, int scale)
    {
        var random = new SampleRandom(seed, $"drive-springs/{Key}");
        for (int i = 0; i < Count * scale; i++)
        {
            Row row = Draw(random, i);
            yield return new SamplePart(row, random.Between(21, 34));
            if (random.OneIn(12))
                yield return new SamplePart(FirstMake(row), random.Between(12, 20));
        }
    }

    private Row Draw(SampleRandom random, int index)
    {
        var style = new UnitStyle(inch: random.OneIn(3));
        WireMaterial material = WireMaterial.Find(random.Pick(Materials))!;
        double wanted = random.In(Rate) * 1e3;
        Written outside = style.Length(random.In(Outside) * Mm);
        SpringDrawing drawing = SpringDrawing.For(wanted, material, style, outside, random.In(Coils));
        Written free = style.Length(Installed * Mm + random.In(Preload) / drawing.Rate);

        // What is printed was measured on other springs than the drawing: within a few per cent of it.
        double printed = drawing.Rate * random.Between(0.975, 1.025);
        double rest = printed * (free.Si - Installed * Mm) / PoundForce;
        double full = printed * (free.Si - Shortest * Mm) / PoundForce;

        var row = new Row();
        row["id"] = $"ds-{Key}-{index + 1:000}";
        row["name"] = $"Drive spring {rest:0}/{full:0} of the {Key} class";
        row["soldAs"] = "each";
        Listing?.On(row, random);
        row.Set("wireDiameter", drawing.Wire);
        row.Set("outsideDiameter", outside);
        row["ends"] = Ends;
        if (!random.OneIn(3))
            row["windingHand"] = random.OneIn(4) ? "left" : "right";
        // Most makers say whether they press a spring solid, and some give a grade.
        if (index % 5 != 3)
            row["setRemoved"] = index % 7 == 5 ? "no" : "yes";
        if (index % 2 == 0)
            row["toleranceGrade"] = $"{index % 3 + 1}";
        int way = index % WaysToKnow;
        if (way != WayOfTable)
        {
            row.Set("activeCoils", drawing.Coils);
            row.Set("totalCoils", drawing.Coils + DeadCoils);
            row.Set("freeLength", free);
        }

        Know(row, way, style, material, printed, free);
        return row;
    }

    /// <summary>How the force is known: the four ways of the catalog, and two of them at once.</summary>
    private void Know(Row row, int way, UnitStyle style, WireMaterial material, double rate, Written free)
    {
        if (way != WayOfTable)
            row["material"] = material.Key;
        if (way is 0 or 4)
            row.Set("rate", style.Rate(rate));
        if (way is 2 or 5)
        {
            Load("first", style.Length(Shortest * Mm));
            Load("second", style.Length(Installed * Mm));
        }

        if (way == WayOfTable)
        {
            row["loadTable"] = string.Join("; ", Enumerable.Range(0, 6).Select(Measured));
            row.Set("solidLength", Bench.Length((Shortest - 6) * Mm));
        }

        void Load(string which, Written length)
        {
            row.Set($"{which}Length", length);
            row.Set($"{which}Load", style.Force(rate * (free.Si - length.Si)));
        }

        // A bench reads a little softer near the free length, where the end coils still close.
        string Measured(int point)
        {
            double length = (Shortest - 2 + point * (Installed - Shortest + 4) / 5) * Mm;
            double load = rate * (free.Si - length) * (1 - 0.004 * point);
            return $"{Bench.Length(length).Text}: {Bench.Force(load).Text}";
        }
    }

    private static Row FirstMake(Row row)
    {
        Row old = row.As($"{row.Cells["id"]}-a", $"{row.Cells["name"]}, first make");
        old["supersededBy"] = row.Cells["id"];
        return old;
    }
}
