using PartPicker.Catalog;
using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Machines;

/// <summary>
/// Machines that cannot be, one cause each, in a catalog or in a request: refused, or warned of, with the place, the value,
/// its limit and what to do.
/// </summary>
[Collection(ServiceTests.Name)]
public sealed class ImpossibleMachineTests(Service service)
{
    private const string Machine = "machines/valley-two-seater.json";
    private const string Id = "valley-two-seater";

    private static readonly Dictionary<string, Cause> Causes = new()
    {
        // The import refuses the catalog.
        ["a belt too short for its shafts"] = new(
            [new(Machine, "\"992 mm\"", "\"700 mm\"")], "/machines/0/centreDistance", "270 mm", "pitch length 700.0 mm", "Check the centre distance"),
        ["a travel beyond the sheave"] = new(
            [new(Machine, "\"24.5 mm\"", "\"90 mm\"")], "/machines/0/centreDistance", "270 mm", "at a radius of 222.419 mm", "and travels"),
        ["a contact beyond full shift"] = new(
            [new(Machine, "\"3 mm\"", "\"25 mm\"")], "/driveClutches/0/contactTravel", "25 mm", "below fullShiftTravel, which is 24.5 mm", "Check both"),
        ["no holes"] = new(
            [new(Machine, "{ \"1\": 50, \"2\": 70, \"3\": 90, \"4\": 110 }", "{}")], "/drivenClutches/0/holes", "{}", "0 entries", "1 to 200 are needed"),
        ["a torque table that turns back"] = new(
            [new(Machine, "[6000, \"80 N·m\"]", "[4900, \"80 N·m\"]")], "/engines/0/torqueCurve/5", "4900: 80 N·m", "must be above that of the point before"),
        ["a rev limit past the torque table"] = new(
            [new(Machine, "\"value\": 9000", "\"value\": 9500")], "/engines/0/revLimitRpm", "9500", "ends at 9200 rpm", "extend the curve"),
        ["an idle above the rev limit"] = new(
            [new(Machine, "\"idleRpm\": 1200", "\"idleRpm\": 9100")], "/engines/0/idleRpm", "9100", "below revLimitRpm, which is 9000", "Check both"),
        ["a belt without friction"] = new(
            [new(Machine, "\"value\": 0.36", "\"value\": 0")], "/belts/0/friction/value", "0", "0.05 to 1.5"),
        ["an arm that swings in again"] = new(
            [new("flyweights.csv", "25 mm: 64.6 mm", "25 mm: 60 mm")], "/machines/0/fitted/flyweight", "fw-valley-46",
            "does not grow with travel at 21.0 mm", "Check the points there"),

        // The prediction refuses it.
        ["a helix that the friction of its cam locks"] = new(
            [new(Machine, "\"camFrictionDeg\": 0.8", "\"camFrictionDeg\": 18"), new("helices.csv", ",43,37,24 mm", ",12,11,24 mm")],
            "machine/fitted/helix", "hx-43-37", "does not exceed the friction angle 18°", "correct the part or the profile"),
        ["a drive spring loose at rest"] = new(
            [new(Machine, "\"springLength\": \"72 mm\"", "\"springLength\": \"120 mm\"")],
            "machine/fitted/driveSpring", "ds-96-201", "the installed length 120.0 mm", "correct the part or the profile"),
        ["a run that the model cannot make"] = new(
            [new(Machine, "\"engagementRpm\": 1970", "\"engagementRpm\": 900")],
            "machine/baselines/0", "factor 5.068 on flyweight thrust", "from 0.25 to 4", "check the fitted parts"),
        ["a run at a ratio out of reach"] = new(
            [new(Machine, "\"ratio\": 2.4", "\"ratio\": 5")], "machine/baselines/0/shiftCurve/0/ratio", "5", "from 3.06 to 0.78"),
        ["a run above the rev limit"] = new(
            [new(Machine, "\"rpm\": 7880", "\"rpm\": 9400")], "machine/baselines/0/shiftCurve/0/rpm", "9400 rpm", "up to the rev limit of 9000 rpm"),

        // The prediction is made, and warns.
        ["a run that contradicts the model"] = new(
            [new(Machine, "\"engagementRpm\": 1970", "\"engagementRpm\": 2600")],
            "anchoring", null, "flyweight thrust is 0.61, outside 0.7 to 1.4", "check the fitted parts, the measured rpm and the machine's profile"),

        // The request is refused.
        ["air colder than cold"] = new("\"temperature\": \"-300 °C\"", "/temperature", "\"-300 °C\"", "-60 °C to 60 °C", "as in"),
        ["an altitude above the weather"] = new("\"altitude\": \"40000 m\"", "/altitude", "\"40000 m\"", "-500 m to 6000 m", "as in"),
        ["a run of the caller that the model cannot make"] = new(
            "\"baseline\": { \"engagementRpm\": 900, \"shiftRpm\": 8000 }",
            "/baseline", "factor 5.068 on flyweight thrust", "from 0.25 to 4", "check the fitted parts"),
        ["an engagement of the caller at a standstill"] = new(
            "\"baseline\": { \"engagementRpm\": 0, \"shiftRpm\": 8000 }", "/baseline/engagementRpm", "0", "100 to 30000"),
    };

    public static TheoryData<string> Names => [.. Causes.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task What_cannot_be_is_told_with_place_value_limit_and_remedy(string name)
    {
        Cause cause = Causes[name];
        Told[] told = cause.Members is { } members ? await Asked(members) : Spoilt(cause.Edits);

        Assert.Contains(
            told, t => t.Place == cause.Place && t.Value == cause.Value && Array.TrueForAll(cause.Words, t.Message.Contains));
    }

    private async Task<Told[]> Asked(string members)
    {
        Answer answer = await service.PostAsync("/v1/predictions", $$"""{ "machine": "{{Id}}", {{members}} }""");
        return
        [
            .. answer.Json["errors"]!.AsArray().Select(e =>
                new Told((string)e!["pointer"]!, (string?)e["sent"], (string)e["expected"]!)),
        ];
    }

    /// <summary>What the import says of the sample catalog with these edits; where it takes it, what a prediction says.</summary>
    private static Told[] Spoilt(IReadOnlyList<Edit> edits)
    {
        using var folder = new TemporaryFolder();
        Repository.CopySamples(
            folder.Path, (file, text) => edits.Where(e => e.File == file).Aggregate(text, (whole, edit) => edit.In(whole)));

        ImportResult import = CatalogImport.ReadFolder(folder.Path);
        if (import.Contents is not { } contents)
            return [.. import.Findings.Select(f => new Told(f.Column, f.Value, f.Reason))];
        var catalog = new CatalogSnapshot("spoilt", contents);
        Outcome<PredictionAnswer> outcome =
            SetPrediction.Predict(catalog, new PredictionRequest { Machine = catalog.FindMachine(Id)! });
        if (outcome.Answer is not { } answer)
            return [.. outcome.Problems.Select(p => new Told(p.Place, p.Sent, p.Expected))];
        return [.. answer.Prediction.Anchoring!.Warnings.Select(w => new Told("anchoring", null, w))];
    }

    /// <summary>One cause, in the sample catalog or in a request, and what must be told.</summary>
    /// <param name="Edits">Of the catalog.</param>
    /// <param name="Members">Of a request beside the machine; null: the catalog is spoilt.</param>
    /// <param name="Place">Where it is told to lie.</param>
    /// <param name="Value">As it stands there; null where the message says it.</param>
    /// <param name="Words">Of the message: the limit and the remedy.</param>
    private sealed record Cause(IReadOnlyList<Edit> Edits, string? Members, string Place, string? Value, string[] Words)
    {
        public Cause(Edit[] edits, string place, string? value, params string[] words)
            : this(edits, null, place, value, words)
        {
        }

        public Cause(string members, string place, string value, params string[] words)
            : this([], members, place, value, words)
        {
        }
    }

    /// <summary>The first place of a text in a file, and what stands there instead.</summary>
    private sealed record Edit(string File, string Old, string New)
    {
        public string In(string text)
        {
            int at = text.IndexOf(Old, StringComparison.Ordinal);
            Assert.True(at >= 0, $"{File} has no {Old}");
            return text.Remove(at, Old.Length).Insert(at, New);
        }
    }

    private sealed record Told(string? Place, string? Value, string Message);
}
