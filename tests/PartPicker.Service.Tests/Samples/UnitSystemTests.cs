using System.Text.Json;
using System.Text.Json.Nodes;
using PartPicker.Api.Errors;
using PartPicker.Api.Wire;
using PartPicker.Quantities;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Samples;

/// <summary>An answer in inch units says what the one in metric units says.</summary>
[Collection(ServiceTests.Name)]
public sealed class UnitSystemTests(Service service)
{
    private const double Relative = 1e-9;

    // The id of an answer and its word for the system are all that may differ.
    private static readonly string[] MayDiffer = ["/id", "/units"];

    public static TheoryData<string> Picks => [.. Repository.SampleRequests("-pick.json")];

    public static TheoryData<string> Predictions => [.. Repository.SampleRequests("-prediction.json")];

    public static TheoryData<string> Lists => new()
    {
        "/v1/parts?limit=200&kind=driveSpring",
        "/v1/parts?limit=200&kind=flyweight",
        "/v1/parts?limit=200&kind=drivenSpring&outlet=quay-stores",
        "/v1/parts?limit=200&kind=helix",
        "/v1/parts?limit=200&text=belt",
        "/v1/parts?limit=200&kind=shim",
    };

    public static TheoryData<string> Machines => [.. SampleCatalog.Snapshot.Machines.Select(m => m.Machine.Id)];

    [Theory]
    [MemberData(nameof(Picks))]
    public void A_ranked_answer_is_the_same_in_both_systems(string file)
    {
        // The search knows nothing of units, so that one search serves both.
        PickRequest request = Read(Repository.ReadSampleRequest(file));
        PickAnswer answer = PartSelection.Pick(SampleCatalog.Snapshot, request).Answer!;

        AssertSame(Written(UnitSystem.Metric), Written(UnitSystem.Inch), "");

        JsonNode Written(UnitSystem units) => JsonNode.Parse(WireJson.Bytes(PickWriter.Write(
            units.ToString(), request, answer,
            new AnswerWriter(SampleCatalog.Snapshot, new AnswerFormat(units, FullPrecision: true)))))!;
    }

    [Theory]
    [MemberData(nameof(Predictions))]
    public async Task A_prediction_is_the_same_in_both_systems(string file)
    {
        string request = Repository.ReadSampleRequest(file);

        AssertSame(
            (await service.PostAsync("/v1/predictions?precision=full", request)).Json,
            (await service.PostAsync("/v1/predictions?precision=full&units=inch", request)).Json, "");
    }

    [Theory]
    [MemberData(nameof(Lists))]
    public async Task A_list_of_parts_is_the_same_in_both_systems(string address) =>
        AssertSame(
            (await service.GetAsync(address + "&precision=full")).Json,
            (await service.GetAsync(address + "&precision=full&units=inch")).Json, "");

    [Theory]
    [MemberData(nameof(Machines))]
    public async Task A_machine_is_the_same_in_both_systems(string id) =>
        AssertSame(
            (await service.GetAsync($"/v1/machines/{id}?precision=full")).Json,
            (await service.GetAsync($"/v1/machines/{id}?precision=full&units=inch")).Json, "");

    private static void AssertSame(JsonNode? metric, JsonNode? inch, string place)
    {
        if (MayDiffer.Contains(place))
            return;
        switch (metric)
        {
            case JsonObject quantity when quantity.ContainsKey("value") && quantity.ContainsKey("unit"):
                AssertSame(quantity["value"]!, (string)quantity["unit"]!, inch!["value"]!, (string)inch["unit"]!, place);
                break;
            case JsonObject curve when curve.ContainsKey("xUnit"):
                AssertSameCurve(curve, inch!.AsObject(), place);
                break;
            case JsonObject members:
                Assert.Equal(members.Select(member => member.Key), inch!.AsObject().Select(member => member.Key));
                foreach ((string name, JsonNode? value) in members)
                    AssertSame(value, inch[name], $"{place}/{name}");
                break;
            case JsonArray items:
                Assert.Equal(items.Count, inch!.AsArray().Count);
                for (int i = 0; i < items.Count; i++)
                    AssertSame(items[i], inch[i], $"{place}/{i}");
                break;
            default:
                Assert.True(JsonNode.DeepEquals(metric, inch), $"{place}: {metric} and {inch}.");
                break;
        }
    }

    private static void AssertSameCurve(JsonObject metric, JsonObject inch, string place)
    {
        JsonArray points = metric["points"]!.AsArray();
        Assert.Equal(points.Count, inch["points"]!.AsArray().Count);
        for (int i = 0; i < points.Count; i++)
        {
            foreach ((int axis, string unit) in new[] { (0, "xUnit"), (1, "yUnit") })
            {
                AssertSame(
                    points[i]![axis]!, (string)metric[unit]!, inch["points"]![i]![axis]!, (string)inch[unit]!,
                    $"{place}/points/{i}/{axis}");
            }
        }
    }

    private static void AssertSame(JsonNode metric, string metricUnit, JsonNode inch, string inchUnit, string place)
    {
        (double one, double other) = ((double)metric, (double)inch);
        DimensionUnits? units = UnitAliases.Dimensions.FirstOrDefault(
            dimension => dimension.Find(metricUnit) is not null && dimension.Find(inchUnit) is not null);
        if (units is not null)
            (one, other) = (units.Find(metricUnit)!.ToSi(one), units.Find(inchUnit)!.ToSi(other));
        else
            Assert.True(metricUnit == inchUnit, $"{place}: {metricUnit} and {inchUnit} are not of one kind.");
        Assert.True(
            Math.Abs(one - other) <= Relative * Math.Max(1e-6, Math.Abs(one)),
            $"{place}: {metric} {metricUnit} is not {inch} {inchUnit}.");
    }

    private static PickRequest Read(string text)
    {
        FaultList faults = new();
        using JsonDocument json = JsonDocument.Parse(text);
        PickRequest? request = PickRequestReader.Read(json.RootElement, SampleCatalog.Snapshot, faults);
        Assert.Empty(faults.Listed);
        return request!;
    }
}
