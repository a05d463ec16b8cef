using PartPicker.Mechanics;
using UnitsNet;
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
    private static readonly string[] Materials = ["chrome-silicon-a401", "chrome-vanadium-a232", "oil-tempered-a229", "music-wire-a228"];

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
        double rate = random.In(Rate) * 1e3;
        Written outside = style.Length(random.In(Outside) * Mm);
        Written wire = style.Wire(WireFor(rate, outside.Si, random.In(Coils), material));
        double coils = Math.Round(RateOfCoils(material, wire, outside, 1) / rate * 20) / 20;
        double computed = RateOfCoils(material, wire, outside, coils);
        Written free = style.Length(Installed * Mm + random.In(Preload) / computed);

        // What is printed was measured on other springs than the drawing: within a few per cent of it.
        double printed = computed * random.Between(0.975, 1.025);
        double rest = printed * (free.Si - Installed * Mm);
        double full = printed * (free.Si - Shortest * Mm);
        string loads = $"{rest / PoundForce:0}/{full / PoundForce:0}";

        var row = new Row();
        row["id"] = $"ds-{Key}-{index + 1:000}";
        row["name"] = $"Drive spring {loads} of the {Key} class";
        row["soldAs"] = "each";
        Listing?.On(row, random);
        row.Set("wireDiameter", wire);
        row.Set("outsideDiameter", outside);
        row["ends"] = Ends;
        if (!random.OneIn(3))
            row["windingHand"] = random.OneIn(4) ? "left" : "right";
        if (index % 6 != 3)
        {
            row.Set("activeCoils", coils);
            row.Set("totalCoils", coils + DeadCoils);
        }

        Know(row, index % 6, style, material, printed, free);
        return row;
    }

    /// <summary>How the force is known: the four ways of the catalog, and two of them at once.</summary>
    private void Know(Row row, int way, UnitStyle style, WireMaterial material, double rate, Written free)
    {
        double longer = Installed * Mm;
        double shorter = Shortest * Mm;
        switch (way)
        {
            case 0:
                row.Set("freeLength", free);
                row.Set("rate", style.Rate(rate));
                break;
            case 1:
                row.Set("freeLength", free);
                row["material"] = material.Key;
                break;
            case 2:
                row.Set("freeLength", free);
                TwoLoads();
                break;
            case 3:
                row["loadTable"] = Table();
                row.Set("solidLength", new UnitStyle(inch: false).Length(shorter - 6 * Mm));
                break;
            case 4:
                row.Set("freeLength", free);
                row["material"] = material.Key;
                row.Set("rate", style.Rate(rate));
                break;
            default:
                row.Set("freeLength", free);
                row["material"] = material.Key;
                TwoLoads();
                break;
        }

        void TwoLoads()
        {
            Written first = style.Length(shorter);
            Written second = style.Length(longer);
            row.Set("firstLength", first);
            row.Set("firstLoad", style.Force(rate * (free.Si - first.Si)));
            row.Set("secondLength", second);
            row.Set("secondLoad", style.Force(rate * (free.Si - second.Si)));
        }

        // A bench reads a little softer near the free length, where the end coils still close.
        string Table() => string.Join("; ", Enumerable.Range(0, 6).Select(i =>
        {
            double length = shorter - 2 * Mm + i * (longer - shorter + 4 * Mm) / 5;
            double load = rate * (free.Si - length) * (1 - 0.004 * i);
            return $"{new UnitStyle(inch: false).Length(length).Text}: {new UnitStyle(inch: false).Force(load).Text}";
        }));
    }

    private static Row FirstMake(Row row)
    {
        Row old = row.As($"{row.Cells["id"]}-a", $"{row.Cells["name"]}, first make");
        old["supersededBy"] = row.Cells["id"];
        return old;
    }

    private static double RateOfCoils(WireMaterial material, Written wire, Written outside, double coils)
    {
        Length diameter = UnitsNet.Length.FromMeters(wire.Si);
        return HelicalSpring.Rate(
            material.ShearModulus(diameter), diameter, UnitsNet.Length.FromMeters(outside.Si - wire.Si), coils).NewtonsPerMeter;
    }

    /// <summary>The wire that gives the rate: d⁴ = 8 D³ Nₐ k / G, by turns with D, which is smaller by one wire.</summary>
    internal static double WireFor(double rate, double outside, double coils, WireMaterial material)
    {
        double wire = outside / 10;
        for (int i = 0; i < 30; i++)
        {
            double shear = material.ShearModulus(UnitsNet.Length.FromMeters(wire)).Pascals;
            wire = Math.Pow(8 * Math.Pow(outside - wire, 3) * coils * rate / shear, 0.25);
        }

        return wire;
    }
}
