using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Api.Picks;
using PartPicker.Api.Wire;
using PartPicker.Quantities;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Wire;

/// <summary>The id of a pick stands for what was meant, however it was written.</summary>
public sealed class PickIdentityTests
{
    private const string Least =
        """ "machine": "valley-two-seater", "targets": { "engagementRpm": 2200, "shiftRpm": 7900 } """;

    private static readonly AnswerFormat Metric = new(UnitSystem.Metric, FullPrecision: false);

    public static TheoryData<string, string> SameMeaning => new()
    {
        { """ "altitude": "1500 m" """, """ "altitude": { "unit": "m", "value": 1500.0 } """ },
        { """ "altitude": "1 in" """, """ "altitude": "25.4 mm" """ },
        { """ "altitude": "1000 ft" """, """ "altitude": "304.8 m" """ },
        { """ "temperature": "50 °F" """, """ "temperature": "10 °C" """ },
        { """ "altitude": "-0 m" """, """ "altitude": "0 m" """ },
        { """ "count": 10 """, """ "count": 1e1 """ },
        { """ "count": 10 """, """ "airLaw": "saeJ1349", "tolerances": { "shiftRpm": 100 } """ },
        { """ "keep": ["helix", "hole"] """, """ "keep": ["hole", "helix", "hole"] """ },
        { """ "exclude": ["hx-40", "ds-103-202"] """, """ "exclude": ["ds-103-202", "hx-40", "hx-40"] """ },
        {
            """ "priceCeilingMinor": 5000, "outlet": "quay-stores" """,
            """ "outlet": "quay-stores", "priceCeilingMinor": 5e3 """
        },
        {
            """ "inStockOnly": false, "demandChecked": false, "group": false, "exclude": [], "rankBy": "miss" """,
            """ "count": 10 """
        },
        { """ "fitted": { "shims": { "count": 0 } } """, """ "fitted": { "shims": { "count": 0, "shim": "sh-66-1.0" } } """ },
        { """ "fitted": { "shims": { "count": 0 } } """, """ "fitted": {} """ },
        { """ "fitted": {} """, """ "fitted": { "driveSpring": "ds-96-201", "hole": "2" } """ },
        { """ "fitted": { "stationMasses": { "tip": "8 g", "heel": "0 g" } } """,
            """ "fitted": { "stationMasses": { "tip": { "value": 0.008, "unit": "kg" } } } """ },
    };

    public static TheoryData<string, string> OtherMeaning => new()
    {
        { """ "altitude": "1500 m" """, """ "altitude": "1500.001 m" """ },
        { """ "count": 9 """, """ "count": 10 """ },
        { """ "keep": ["helix"] """, """ "keep": [] """ },
        { """ "temperature": "15 °C" """, """ "count": 10 """ },
        { """ "outlet": "valley-counter" """, """ "count": 10 """ },
        { """ "exclude": ["hx-40"] """, """ "exclude": [] """ },
        { """ "inStockOnly": true, "outlet": "quay-stores" """, """ "outlet": "quay-stores" """ },
        {
            """ "priceCeilingMinor": 5000, "outlet": "quay-stores" """,
            """ "priceCeilingMinor": 5001, "outlet": "quay-stores" """
        },
        { """ "demandChecked": true """, """ "demandChecked": false """ },
        { """ "rankBy": "leastWork" """, """ "rankBy": "miss" """ },
        { """ "group": true """, """ "group": false """ },
        { """ "fitted": { "hole": "1" } """, """ "fitted": { "hole": "2" } """ },
        { """ "baseline": { "engagementRpm": 2000, "shiftRpm": 7800 } """,
            """ "baseline": { "engagementRpm": 2000, "shiftCurve": [{ "ratio": 1, "rpm": 7800 }] } """ },
    };

    [Theory]
    [MemberData(nameof(SameMeaning))]
    public void Two_spellings_of_one_request_have_one_id(string one, string other) =>
        Assert.Equal(Id($"{{ {Least}, {one} }}"), Id($"{{ {other}, {Least} }}"));

    [Theory]
    [MemberData(nameof(OtherMeaning))]
    public void Two_requests_have_two_ids(string one, string other) =>
        Assert.NotEqual(Id($"{{ {Least}, {one} }}"), Id($"{{ {Least}, {other} }}"));

    [Fact]
    public void A_target_curve_of_one_point_is_a_flat_target() =>
        Assert.Equal(
            Id($"{{ {Least} }}"),
            Id("""
                { "machine": "valley-two-seater",
                  "targets": { "engagementRpm": 2200, "shiftCurve": [{ "ratio": 2, "rpm": 7900 }] } }
                """));

    [Fact]
    public void Each_goal_and_each_engagement_is_a_target_of_its_own()
    {
        string[] targets =
        [
            """ "engagementRpm": 2150, "shiftRpm": 8000 """,
            """ "shiftRpm": 8000 """,
            """ "engagementRpm": 2150, "peakPower": true """,
            """ "engagementRpm": 2150, "shiftCurve": [{ "ratio": 1, "rpm": 8000 }, { "ratio": 2, "rpm": 7900 }] """,
            """ "engagementRpm": 2150, "speedCurve": [{ "speed": "30 km/h", "rpm": 7900 }, { "speed": "60 km/h", "rpm": 8000 }] """,
            """ "engagementRpm": 2150, "speedCurve": [{ "speed": "30 mph", "rpm": 7900 }, { "speed": "60 mph", "rpm": 8000 }] """,
        ];

        Assert.Equal(targets.Length, targets.Select(Target).Distinct().Count());
        Assert.Equal(
            Target(targets[4]),
            Target("""
                "speedCurve": [{ "rpm": 8e3, "speed": { "value": 60, "unit": "km/h" } }, { "speed": "30 km/h", "rpm": 7900 }],
                "engagementRpm": 2150
                """));
        Assert.Equal(Target(targets[0]), Target(""" "engagementRpm": 2150, "speedCurve": [{ "speed": "30 km/h", "rpm": 8000 }] """));

        static string Target(string members) => Id($"{{ \"machine\": \"canyon-racer\", \"targets\": {{ {members} }} }}");
    }

    [Fact]
    public void Shims_and_steps_and_pins_of_a_set_belong_to_it()
    {
        string[] canyon =
        [
            """ "shims": { "shim": "sh-66-1.0", "count": 1 } """, """ "shims": { "shim": "sh-66-1.0", "count": 2 } """,
            """ "shims": { "shim": "sh-66-0.5", "count": 1 } """, "",
        ];
        string[] meadow =
        [
            """ "adjusterStep": "1" """, """ "adjusterStep": "3" """, """ "stationMasses": { "pin": "6 g" } """,
            """ "stationMasses": {} """, "",
        ];

        Assert.Equal(canyon.Length, canyon.Select(set => Fitted("canyon-racer", set)).Distinct().Count());
        Assert.Equal(meadow.Length, meadow.Select(set => Fitted("meadow-carrier", set)).Distinct().Count());

        static string Fitted(string machine, string set) => Id(
            $"{{ \"machine\": \"{machine}\", \"targets\": {{ \"engagementRpm\": 2000, \"shiftRpm\": 7000 }}, \"fitted\": {{ {set} }} }}");
    }

    [Fact]
    public void Units_precision_catalog_model_and_form_belong_to_the_identity()
    {
        PickRequest request = Read($"{{ {Least} }}");
        string[] ids =
        [
            PickIdentity.Of(request, Metric, "r1").ToId(),
            PickIdentity.Of(request, Metric with { Units = UnitSystem.Inch }, "r1").ToId(),
            PickIdentity.Of(request, Metric with { FullPrecision = true }, "r1").ToId(),
            PickIdentity.Of(request, Metric, "r2").ToId(),
            (PickIdentity.Of(request, Metric, "r1") with { ModelVersion = "0.9" }).ToId(),
            (PickIdentity.Of(request, Metric, "r1") with { Form = "before a member came" }).ToId(),
        ];

        Assert.Equal(ids.Length, ids.Distinct().Count());
    }

    [Fact]
    public void A_form_tells_every_member_however_deep()
    {
        Assert.Equal(
            "{id:String,lines:[{size:Double,next:Outer}],note:String,count:Int32}", WireForm.Of(typeof(Outer)));
        Assert.Contains("engagementRpm:Double", WireForm.Of(typeof(PickAnswerWire)));
    }

    private sealed record Outer(string Id, IReadOnlyList<Inner> Lines, string? Note, int? Count);

    private sealed record Inner(double Size, Outer? Next);

    [Fact]
    public void The_request_as_understood_means_the_same_when_it_is_sent_again()
    {
        foreach (string name in Repository.SampleRequests("-pick.json"))
        {
            PickRequest request = Read(Repository.ReadSampleRequest(name));
            string understood = JsonSerializer.Serialize(RequestWriter.Write(request), WireJson.Options);

            Assert.Equal(understood, JsonSerializer.Serialize(RequestWriter.Write(Read(understood)), WireJson.Options));
        }
    }

    private static string Id(string json) => PickIdentity.Of(Read(json), Metric, "r1").ToId();

    private static PickRequest Read(string text)
    {
        FaultList faults = new();
        using JsonDocument json = JsonDocument.Parse(text);
        PickRequest? request = PickRequestReader.Read(json.RootElement, SampleCatalog.Snapshot, faults);
        Assert.Empty(faults.Listed);
        return request!;
    }
}
