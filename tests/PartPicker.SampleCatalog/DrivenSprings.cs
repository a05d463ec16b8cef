using PartPicker.Mechanics;
using static PartPicker.SampleCatalog.UnitStyle;

namespace PartPicker.SampleCatalog;

/// <summary>Driven springs that are made for one driven clutch; lengths in millimetres.</summary>
/// <param name="Key">Names the class, and its stream of draws.</param>
/// <param name="Count">Rows in the committed catalog.</param>
/// <param name="Listing">Null for a clutch that no machine of the catalog has.</param>
/// <param name="Installed">Length in low gear.</param>
/// <param name="Shortest">Length at full shift.</param>
/// <param name="Outside">Outside diameter.</param>
/// <param name="Coils">Coils of the body.</param>
/// <param name="Rate">In N/mm.</param>
/// <param name="Free">Free length.</param>
/// <param name="Hand">Winding hand, as the catalog names it.</param>
/// <param name="Legs">Ends, as the catalog names them; null where the spring is only compressed.</param>
internal sealed record DrivenSprings(
    string Key, int Count, Listing? Listing, double Installed, double Shortest,
    Span Outside, Span Coils, Span Rate, Span Free, string Hand, string? Legs)
{
    private const int WaysToKnow = 4;
    private const double CoilsOfLegs = 0.2;

    // Two torques as makers print them; a table goes beyond any hole and cam of these clutches.
    private const double FirstTwistDeg = 60;
    private const double SecondTwistDeg = 150;
    private const double LastTwistDeg = 220;
    private static readonly UnitStyle Bench = new(inch: false);
    private static readonly string[] Materials =
        ["chrome-silicon-a401", "chrome-vanadium-a232", "oil-tempered-a229"];

    public static readonly IReadOnlyList<DrivenSprings> All =
    [
        new("canyon", 7, new("canyon-driven", 2019, null), 64, 43.6, new(62.5, 64.5), new(4, 4.6), new(8.2, 11.5), new(98, 112), "left", "tangs"),
        new("meadow", 6, new("meadow-driven", 2012, 2020), 50, 34.5, new(46, 48.5), new(4.6, 5.4), new(6, 9), new(78, 92), "left", "straight"),
        new("harbour", 6, new("harbour-driven", 2016, null), 118, 105.9, new(44, 46), new(5.6, 6.8), new(4.4, 7), new(158, 180), "right", null),
        new("ridge", 6, new("ridge-driven", 2014, 2023), 56, 38.3, new(55.5, 57.5), new(4.4, 5), new(6.8, 9.4), new(86, 100), "left", "hooked"),
        new("valley", 2, new("valley-driven", 2017, 2024), 60, 41.4, new(60, 61.5), new(4.6, 5), new(7.6, 9.6), new(96, 106), "right", "tangs"),
        new("plateau", 2, new("plateau-driven", 2015, 2022), 55, 31, new(77, 79), new(3.4, 3.8), new(6.6, 8.4), new(98, 108), "right", "hooked"),
        new("tour", 8, null, 72, 48, new(76, 80), new(4, 5), new(9, 13), new(98, 114), "left", "hooked"),
        new("stub", 5, null, 44, 31, new(38, 41), new(4.4, 5.2), new(5, 8), new(66, 78), "right", "straight"),
    ];

    public IEnumerable<SamplePart> Make(int seed, int scale)
    {
        var random = new SampleRandom(seed, $"driven-springs/{Key}");
        for (int i = 0; i < Count * scale; i++)
            yield return new SamplePart(Draw(random, i), random.Between(25, 38));
    }

    private Row Draw(SampleRandom random, int index)
    {
        var style = new UnitStyle(inch: random.OneIn(3));
        WireMaterial material = WireMaterial.Find(random.Pick(Materials))!;
        double wanted = random.In(Rate) * 1e3;
        double legCoils = Legs is null ? 0 : CoilsOfLegs;
        Written outside = style.Length(random.In(Outside) * Mm);
        double wantedCoils = random.In(Coils) + legCoils;
        SpringDrawing drawing = SpringDrawing.For(wanted, material, style, outside, wantedCoils);
        double scatter = random.Between(0.975, 1.025);
        double axial = drawing.Rate * scatter;
        double twist = Legs is null ? 0 : drawing.TwistRate * scatter;

        var row = new Row();
        row["id"] = $"dv-{Key}-{index + 1:000}";
        row["name"] = Legs is null
            ? $"Driven spring {axial / 1e3:0.0} N/mm of the {Key} class, only compressed"
            : $"Driven spring {twist:0.0}/{axial / 1e3:0.0} of the {Key} class";
        row["soldAs"] = "each";
        Listing?.On(row, random);
        row.Set("wireDiameter", drawing.Wire);
        row.Set("outsideDiameter", outside);
        row.Set("activeCoils", drawing.Coils);
        row.Set("bodyCoils", drawing.Coils - legCoils);
        row["windingHand"] = Hand;
        if (Legs is not null)
        {
            row["legs"] = Legs;
            if (!random.OneIn(4))
                row.Set("twistLimitDeg", random.Whole(14, 22) * 10);
            if (random.OneIn(6))
                row.Set("legOffsetDeg", random.Pick([-5.0, 5.0, 10.0]));
        }

        if (index % 3 == 0)
            row["toleranceGrade"] = "2";
        Written free = style.Length(random.In(Free) * Mm);
        KnowForce(row, index % WaysToKnow, style, material, axial, free);
        KnowTorque(row, index % WaysToKnow, style, twist);
        return row;
    }

    /// <summary>By rate, by geometry, by one load, or by a table of the bench.</summary>
    private void KnowForce(Row row, int way, UnitStyle style, WireMaterial material, double axial, Written free)
    {
        if (way != 3)
            row.Set("freeLength", free);
        switch (way)
        {
            case 0:
                row.Set("rate", style.Rate(axial));
                break;
            case 1:
                row["material"] = material.Key;
                break;
            case 2:
                Written length = style.Length(Installed * Mm);
                row.Set("loadLength", length);
                row.Set("load", style.Force(axial * (free.Si - length.Si)));
                break;
            default:
                row["loadTable"] = string.Join("; ", Enumerable.Range(0, 5).Select(Measured));
                break;
        }

        string Measured(int point)
        {
            double length = (Shortest - 2 + point * (Installed - Shortest + 4) / 4) * Mm;
            return $"{Bench.Length(length).Text}: {Bench.Force(axial * (free.Si - length)).Text}";
        }
    }

    /// <summary>By rate, by geometry, by two torques, or by a table of the bench.</summary>
    private void KnowTorque(Row row, int way, UnitStyle style, double twist)
    {
        // A spring that is only compressed has no torque to measure: a rate of nothing says so.
        if (Legs is null || way == 0)
        {
            row.Set("twistRate", TwistRate(twist));
            return;
        }

        if (way == 2)
        {
            row.Set("firstTwistDeg", FirstTwistDeg);
            row.Set("firstTorque", style.Torque(TorqueAt(FirstTwistDeg)));
            row.Set("secondTwistDeg", SecondTwistDeg);
            row.Set("secondTorque", style.Torque(TorqueAt(SecondTwistDeg)));
        }
        else if (way == 3)
        {
            row["torqueTable"] = string.Join("; ", Enumerable.Range(0, 5).Select(
                point => $"{point * LastTwistDeg / 4:0}: {Bench.Torque(TorqueAt(point * LastTwistDeg / 4)).Text}"));
        }

        double TorqueAt(double degrees) => twist * degrees * (Math.PI / 180);
    }
}
