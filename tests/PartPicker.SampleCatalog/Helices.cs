namespace PartPicker.SampleCatalog;

/// <summary>Helices that are made for one driven clutch; lengths in millimetres.</summary>
/// <param name="Key">Names the class, and its stream of draws.</param>
/// <param name="Count">Rows in the committed catalog.</param>
/// <param name="Listing">Null for a clutch that no machine of the catalog has.</param>
/// <param name="CamRadius">Radius of the cam track.</param>
/// <param name="Mount">The word for how it is fixed.</param>
/// <param name="Opening">Opening travel at full shift.</param>
/// <param name="Start">Degrees in low gear.</param>
internal sealed record Helices(
    string Key, int Count, Listing? Listing, double CamRadius, string Mount, double Opening, Span Start)
{
    public static readonly IReadOnlyList<Helices> All =
    [
        new("canyon", 3, new("canyon-driven", 2019, null), 45, "four-screw", 20.4, new(38, 47)),
        new("meadow", 2, new("meadow-driven", 2012, 2020), 36, "spline", 15.5, new(41, 48)),
        new("harbour", 2, new("harbour-driven", 2016, null), 24, "pinned-sleeve", 12.1, new(38, 47)),
        new("ridge", 2, new("ridge-driven", 2014, 2023), 39, "three-screw", 17.7, new(40, 47)),
        new("tour", 4, null, 52, "four-screw", 24, new(36, 50)),
        new("stub", 2, null, 30, "spline", 13, new(40, 48)),
    ];

    public IEnumerable<SamplePart> Make(int seed, int scale)
    {
        var random = new SampleRandom(seed, $"helices/{Key}");
        for (int i = 0; i < Count * scale; i++)
            yield return new SamplePart(Draw(random, i), random.Between(64, 118));
    }

    private Row Draw(SampleRandom random, int index)
    {
        double start = Math.Round(random.In(Start) * 2) / 2;
        double drop = random.Whole(2, 7);
        double travel = Math.Ceiling(Opening) + random.Whole(1, 3);
        var row = new Row();
        row["id"] = $"hx-{Key}-{index + 1:000}";
        row["soldAs"] = "each";
        Listing?.On(row, random);
        row.Set("camRadius [mm]", CamRadius);
        if (!random.OneIn(8))
            row["mount"] = Mount;
        switch (index % 3)
        {
            case 0:
                row["name"] = $"Helix {start:0.#} to {start - drop:0.#} degrees of the {Key} class";
                row.Set("helixDeg", start);
                row.Set("finishDeg", start - drop);
                row.Set("finishTravel", new UnitStyle(inch: random.OneIn(4)).Length(travel * UnitStyle.Mm));
                break;
            case 1:
                row["name"] = $"Helix {start:0.#} degrees straight of the {Key} class";
                row.Set("helixDeg", start);
                break;
            default:
                row["name"] = $"Helix in three angles of the {Key} class, from {start:0.#} degrees";
                row["anglePoints"] = $"0 mm: {start:0.#}; {Math.Round(travel * 0.4):0} mm: {start - drop + 1:0.#}; "
                    + $"{travel:0} mm: {start - drop:0.#}";
                break;
        }

        return row;
    }
}
