using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Wire;

public sealed class RequestReaderTests
{
    private const string Targets = """ "targets": { "engagementRpm": 2200, "shiftRpm": 7900 } """;
    private const string Least = $$""" "machine": "{{SampleCatalog.Machine}}", {{Targets}} """;

    [Fact]
    public void A_request_with_nothing_but_machine_and_targets_gets_every_default()
    {
        PickRequest request = Read($$"""{ {{Least}} }""");

        Assert.Equal(SampleCatalog.Machine, request.Machine.Machine.Id);
        Assert.Equal(2200, request.Target.EngagementRpm);
        Assert.Equal(new ShiftGoal.Flat(7900), request.Target.Shift);
        Assert.Equal(Tolerances.Standard, request.Tolerances);
        Assert.Equal(ScoreWeights.Standard, request.Weights);
        Assert.Equal(request.Machine.Machine.Fitted, request.Fitted);
        Assert.Null(request.Baseline);
        Assert.Equal(new AirState(0, null), request.Air);
        Assert.Equal(AirLaw.SaeJ1349, request.AirLaw);
        Assert.Null(request.LaunchRpm);
        Assert.Equal(100, request.LaunchMarginRpm);
        Assert.Null(request.SlipMargin);
        Assert.Empty(request.Keep);
        Assert.Null(request.Outlet);
        Assert.Equal(10, request.Count);
        Assert.Equal(9, request.PointCount);
    }

    [Fact]
    public void Every_member_reaches_the_domain_in_SI()
    {
        PickRequest request = Read($$"""
            {
              "machine": "{{SampleCatalog.Machine}}",
              "targets": {
                "engagementRpm": 2150.5,
                "shiftCurve": [{ "ratio": 0.8, "rpm": 8100 }, { "ratio": 3, "rpm": 7750 }]
              },
              "tolerances": { "engagementRpm": 50 },
              "weights": { "engagement": 0.1, "shift": 0.9 },
              "baseline": { "engagementRpm": 2040, "shiftRpm": 7850, "altitude": "900 ft", "temperature": "68 °F", "relativeHumidity": "55 %" },
              "altitude": { "value": 1.5, "unit": "m" },
              "temperature": "-10 °C",
              "relativeHumidity": "62.5 percent",
              "airLaw": "iso1585",
              "launchRpm": 1900, "launchMarginRpm": 0, "slipMargin": 1.1,
              "keep": ["helix", "hole"], "outlet": "valley-counter", "count": 50, "ratioPoints": 15, "refusals": 0
            }
            """);

        Assert.Equal(
            [new RatioRpm(3, 7750), new RatioRpm(0.8, 8100)],
            Assert.IsType<ShiftGoal.ByRatio>(request.Target.Shift).Points);
        Assert.Equal(new Tolerances(50, 100), request.Tolerances);
        Assert.Equal(new ScoreWeights(0.1, 0.9), request.Weights);
        Assert.Equal(request.Fitted, request.Baseline!.Parts);
        Assert.Equal((2040, 7850), (request.Baseline.EngagementRpm, request.Baseline.FlatShiftRpm));
        Assert.Equal(274.32, request.Baseline.Air.AltitudeM, 1e-9);
        Assert.Equal(293.15, request.Baseline.Air.TemperatureK!.Value, 1e-9);
        Assert.Equal(0.55, request.Baseline.Air.RelativeHumidity);
        Assert.Equal(new AirState(1.5, 263.15) { RelativeHumidity = 0.625 }, request.Air);
        Assert.Equal(AirLaw.Iso1585, request.AirLaw);
        Assert.Equal((1900, 0, 1.1), (request.LaunchRpm!.Value, request.LaunchMarginRpm, request.SlipMargin!.Value));
        Assert.Equal([Slot.Hole, Slot.Helix], request.Keep.Order());
        Assert.Equal("valley-counter", request.Outlet!.Id);
        Assert.Equal((50, 15, 0), (request.Count, request.PointCount, request.RefusalCount));
    }

    [Fact]
    public void Every_wish_reaches_the_domain()
    {
        PickRequest request = Read("""
            {
              "machine": "canyon-racer",
              "targets": {
                "engagementRpm": 2150,
                "speedCurve": [{ "speed": "70 mph", "rpm": 8080 }, { "speed": "36 km/h", "rpm": 8000 }]
              },
              "fitted": { "shims": { "shim": "sh-66-0.5", "count": 2 } },
              "exclude": ["hx-40", "ds-103-202"], "inStockOnly": true, "priceCeilingMinor": 25000, "outlet": "quay-stores",
              "demandChecked": true, "rankBy": "leastWork", "group": true
            }
            """);

        SpeedRpm[] points = [.. Assert.IsType<ShiftGoal.BySpeed>(request.Target.Shift).Points];
        Assert.Equal([8000, 8080], points.Select(point => point.Rpm));
        Assert.Equal(10, points[0].SpeedMPerS, 1e-9);
        Assert.Equal(31.2928, points[1].SpeedMPerS, 1e-9);
        Assert.Equal(new FittedShims("sh-66-0.5", 2), request.Fitted!.Shims);
        Assert.Equal(["ds-103-202", "hx-40"], request.Exclude.Order(StringComparer.Ordinal));
        Assert.True(request.InStockOnly && request.DemandChecked && request.Group);
        Assert.Equal(25_000, request.PriceCeilingMinor);
        Assert.Equal(RankBy.LeastWork, request.RankBy);
    }

    [Fact]
    public void A_goal_may_be_the_peak_of_the_power()
    {
        PickRequest request = Read($$"""
            { "machine": "{{SampleCatalog.Machine}}", "targets": { "engagementRpm": 2200, "peakPower": true } }
            """);

        Assert.IsType<ShiftGoal.PeakPower>(request.Target.Shift);
    }

    [Fact]
    public void Targets_may_be_changes_and_every_run_be_left_aside()
    {
        PickRequest request = Read($$"""
            {
              "machine": "{{SampleCatalog.Machine}}", "anchor": false,
              "targets": { "engagementChangeRpm": 300, "shiftChangeRpm": -150 }
            }
            """);

        Assert.Equal(new ShiftTarget(null, new ShiftGoal.Change(-150)) { EngagementChangeRpm = 300 }, request.Target);
        Assert.False(request.Anchor);
        Assert.Equal((300, -150), (RequestWriter.Write(request).Targets.EngagementChangeRpm, RequestWriter.Write(request).Targets.ShiftChangeRpm));
        Assert.False(RequestWriter.Write(request).Anchor);
    }

    [Fact]
    public void Where_the_belt_does_not_start_the_machine_there_is_no_engagement()
    {
        PickRequest request = Read("""
            {
              "machine": "harbour-scooter", "targets": { "shiftRpm": 7700 },
              "baseline": { "shiftRpm": 7500 }
            }
            """);

        Assert.Null(request.Target.EngagementRpm);
        Assert.Null(request.Baseline!.EngagementRpm);
    }

    [Fact]
    public void A_ramp_has_a_step_and_a_pin_and_another_ramp_starts_without_both()
    {
        const string targets = """ "machine": "meadow-carrier", "targets": { "engagementRpm": 1900, "shiftRpm": 5950 } """;
        PartSet delivered = SampleCatalog.Snapshot.FindMachine("meadow-carrier")!.Machine.Fitted!;

        Assert.Equal("2", delivered.AdjusterStep);
        Assert.Equal("3", Read($$"""{ {{targets}}, "fitted": { "adjusterStep": "3" } }""").Fitted!.AdjusterStep);
        Assert.Equal(
            delivered.StationMasses, Read($$"""{ {{targets}}, "fitted": { "adjusterStep": "3" } }""").Fitted!.StationMasses);
        PartSet other = Read($$"""
            { {{targets}}, "fitted": { "flyweight": "fw-meadow-36", "adjusterStep": "1", "stationMasses": { "pin": "9 g" } } }
            """).Fitted!;
        Assert.Equal("1", other.AdjusterStep);
        Assert.Equal([KeyValuePair.Create(StationName.Pin, 0.009)], other.StationMasses);
        Assert.Equal(
            ["/fitted/adjusterStep unknown-adjuster-step"],
            Faults($$"""{ {{targets}}, "fitted": { "flyweight": "fw-meadow-36" } }"""));
    }

    [Fact]
    public void Shims_stay_under_their_spring_until_they_are_said_to_be_gone()
    {
        CatalogContents contents = SampleCatalog.Contents;
        Machine racer = SampleCatalog.Snapshot.FindMachine("canyon-racer")!.Machine;
        CatalogItem raised = racer with { Fitted = racer.Fitted! with { Shims = new FittedShims("sh-66-1.0", 1) } };
        CatalogSnapshot catalog = new(
            "raised", contents with { Items = [.. contents.Items.Where(item => item.Id != racer.Id), raised] });

        Assert.Equal(new FittedShims("sh-66-1.0", 1), Shims(""" "hole": "60" """));
        Assert.Equal(new FittedShims("sh-66-1.0", 1), Shims($""" "driveSpring": "{racer.Fitted!.DriveSpring}" """));
        Assert.Null(Shims(""" "driveSpring": "ds-103-202" """));
        Assert.Null(Shims(""" "shims": { "count": 0 } """));
        Assert.Equal(new FittedShims("sh-66-0.5", 2), Shims(""" "shims": { "shim": "sh-66-0.5", "count": 2 } """));

        // What was understood says so itself: sent again, the shims are as gone as before.
        PickRequest bare = Asked(""" "shims": { "count": 0 } """);
        using JsonDocument understood = JsonDocument.Parse(WireJson.Bytes(RequestWriter.Write(bare)));
        Assert.Null(PickRequestReader.Read(understood.RootElement, catalog, new FaultList())!.Fitted!.Shims);

        FittedShims? Shims(string set) => Asked(set).Fitted!.Shims;

        PickRequest Asked(string set)
        {
            using JsonDocument json = JsonDocument.Parse($$"""
                {
                  "machine": "canyon-racer", "targets": { "engagementRpm": 2150, "shiftRpm": 8000 },
                  "fitted": { {{set}} }
                }
                """);
            return PickRequestReader.Read(json.RootElement, catalog, new FaultList())!;
        }
    }

    [Fact]
    public void A_set_takes_what_it_leaves_out_from_the_set_it_changes()
    {
        PartSet delivered = SampleCatalog.Snapshot.FindMachine(SampleCatalog.Machine)!.Machine.Fitted!;
        PickRequest request = Read($$"""
            {
              {{Least}},
              "fitted": { "driveSpring": "ds-103-202" },
              "baseline": { "parts": { "hole": "1" }, "engagementRpm": 2000, "shiftRpm": 7800 }
            }
            """);

        Assert.Equal(delivered with { DriveSpring = "ds-103-202" }, request.Fitted);
        Assert.Equal(delivered with { DriveSpring = "ds-103-202", Hole = "1" }, request.Baseline!.Parts);
    }

    [Fact]
    public void Another_flyweight_starts_with_empty_stations_and_the_same_one_keeps_them()
    {
        PartSet delivered = SampleCatalog.Snapshot.FindMachine(SampleCatalog.Machine)!.Machine.Fitted!;
        string other = SampleCatalog.Snapshot.All<Flyweight>().First(f => f.Id != delivered.Flyweight).Id;

        Assert.NotEmpty(delivered.StationMasses);
        Assert.Equal(
            delivered.StationMasses,
            Read($$"""{ {{Least}}, "fitted": { "flyweight": "{{delivered.Flyweight}}" } }""").Fitted!.StationMasses);
        Assert.Empty(Read($$"""{ {{Least}}, "fitted": { "flyweight": "{{other}}" } }""").Fitted!.StationMasses);
        Assert.Equal(
            [KeyValuePair.Create(StationName.Tip, 0.008)],
            Read($$"""{ {{Least}}, "fitted": { "stationMasses": { "tip": "8 g", "heel": "0 g" } } }""").Fitted!.StationMasses);
    }

    [Theory]
    [InlineData(""" "altitude": 300 """, "/altitude unit-needed")]
    [InlineData(""" "altitude": "300" """, "/altitude unit-needed")]
    [InlineData(""" "altitude": "NaN m" """, "/altitude unreadable-quantity")]
    [InlineData(""" "altitude": "1e400 m" """, "/altitude unreadable-quantity")]
    [InlineData(""" "altitude": "1,5 m" """, "/altitude unreadable-quantity")]
    [InlineData(""" "altitude": "10 kg" """, "/altitude unreadable-quantity")]
    [InlineData(""" "altitude": "6001 m" """, "/altitude out-of-range")]
    [InlineData(""" "altitude": "-501 m" """, "/altitude out-of-range")]
    [InlineData(""" "altitude": true """, "/altitude wrong-type")]
    [InlineData(""" "altitude": null """, "/altitude wrong-type")]
    [InlineData(""" "altitude": { "value": "3", "unit": "m" } """, "/altitude/value wrong-type")]
    [InlineData(""" "altitude": { "value": 3 } """, "/altitude/unit missing-member")]
    [InlineData(""" "altitude": { "value": 3, "unit": "m", "by": 2 } """, "/altitude/by unknown-member")]
    [InlineData(""" "temperature": "61 °C" """, "/temperature out-of-range")]
    [InlineData(""" "temperature": "-61 °C" """, "/temperature out-of-range")]
    [InlineData(""" "airLaw": "SaeJ1349" """, "/airLaw unknown-word")]
    [InlineData(""" "airLaw": 1 """, "/airLaw wrong-type")]
    [InlineData(""" "launchRpm": 99 """, "/launchRpm out-of-range")]
    [InlineData(""" "launchRpm": 30001 """, "/launchRpm out-of-range")]
    [InlineData(""" "launchRpm": 1e400 """, "/launchRpm out-of-range")]
    [InlineData(""" "launchRpm": "2000 rpm" """, "/launchRpm wrong-type")]
    [InlineData(""" "launchRpm": 1900, "launchMarginRpm": -1 """, "/launchMarginRpm out-of-range")]
    [InlineData(""" "launchRpm": 1900, "launchMarginRpm": 2001 """, "/launchMarginRpm out-of-range")]
    [InlineData(""" "slipMargin": 5.1 """, "/slipMargin out-of-range")]
    [InlineData(""" "keep": ["hole", "spring", 3] """, "/keep/1 unknown-word", "/keep/2 wrong-type")]
    [InlineData(""" "keep": ["hole", "hole", "hole", "hole", "hole", "hole"] """, "/keep out-of-range")]
    [InlineData(""" "keep": "hole" """, "/keep wrong-type")]
    [InlineData(""" "outlet": "nowhere" """, "/outlet unknown-outlet")]
    [InlineData(""" "count": 0 """, "/count out-of-range")]
    [InlineData(""" "count": 51 """, "/count out-of-range")]
    [InlineData(""" "count": 2.5 """, "/count out-of-range")]
    [InlineData(""" "ratioPoints": 2 """, "/ratioPoints out-of-range")]
    [InlineData(""" "ratioPoints": 16 """, "/ratioPoints out-of-range")]
    [InlineData(""" "refusals": 501 """, "/refusals out-of-range")]
    [InlineData(""" "refusals": -1 """, "/refusals out-of-range")]
    [InlineData(""" "tolerances": { "engagementRpm": 4.9, "shiftRpm": 2001 } """,
        "/tolerances/engagementRpm out-of-range", "/tolerances/shiftRpm out-of-range")]
    [InlineData(""" "weights": { "engagement": 0.3, "shift": 0.6 } """, "/weights weights-sum")]
    [InlineData(""" "weights": { "engagement": 1 } """, "/weights/shift missing-member")]
    [InlineData(""" "weights": { "engagement": -0.5, "shift": 1.5 } """,
        "/weights/engagement out-of-range", "/weights/shift out-of-range")]
    [InlineData(""" "fitted": { "driveSpring": "none-such" } """, "/fitted/driveSpring unknown-part")]
    [InlineData(""" "fitted": { "helix": "ds-103-202" } """, "/fitted/helix wrong-kind")]
    [InlineData(""" "fitted": { "helix": "" } """, "/fitted/helix out-of-range")]
    [InlineData(""" "fitted": { "hole": 2 } """, "/fitted/hole wrong-type")]
    [InlineData(""" "fitted": { "stationMasses": { "heel": 4, "toe": "4 g", "tip": "101 g" } } """,
        "/fitted/stationMasses/heel unit-needed", "/fitted/stationMasses/tip out-of-range",
        "/fitted/stationMasses/toe unknown-member")]
    [InlineData(""" "fitted": { "hole": "9", "helix": "none-such", "stationMasses": { "tip": "3 g", "middle": "1 g" } } """,
        "/fitted/helix unknown-part", "/fitted/stationMasses/tip station-mass",
        "/fitted/stationMasses/middle station-mass", "/fitted/hole unknown-hole")]
    [InlineData(""" "fitted": { "flyweight": "none-such", "stationMasses": { "tip": "3 g" } } """,
        "/fitted/flyweight unknown-part")]
    [InlineData(""" "baseline": { "engagementRpm": 2000, "shiftRpm": 7800, "parts": { "hole": "9" } } """,
        "/baseline/parts/hole unknown-hole")]
    [InlineData(""" "baseline": { "engagementRpm": 2000 } """, "/baseline/shiftRpm missing-member")]
    [InlineData(""" "baseline": { "engagementRpm": 2000, "shiftRpm": 7800, "parts": { "hole": 1 } } """,
        "/baseline/parts/hole wrong-type")]
    [InlineData(""" "baselines": [] """, "/baselines unknown-member")]
    [InlineData(""" "a/b~c": 1 """, "/a~1b~0c unknown-member")]
    [InlineData(""" "count": 3, "count": 4 """, "/count duplicate-member")]
    [InlineData(""" "count": 3, "c\u006funt": 3 """, "/count duplicate-member")]
    public void A_fault_is_told_with_its_place_and_code(string member, params string[] expected) =>
        Assert.Equal(expected, Faults($$"""{ {{Least}}, {{member}} }"""));

    [Theory]
    [InlineData(""" {} """, "/targets/shiftRpm missing-member")]
    [InlineData(""" { "engagementRpm": 2200, "shiftRpm": 7900, "shiftCurve": [{ "ratio": 1, "rpm": 7900 }] } """,
        "/targets/shiftCurve contradiction")]
    [InlineData(""" { "engagementRpm": 2200, "shiftCurve": [] } """, "/targets/shiftCurve out-of-range")]
    [InlineData(""" { "engagementRpm": 2200, "shiftCurve": [{ "ratio": 1, "rpm": 7900 }, { "ratio": 1.0, "rpm": 7800 }] } """,
        "/targets/shiftCurve/1/ratio ratio-twice")]
    [InlineData(""" { "engagementRpm": 2200, "shiftCurve": [3, { "ratio": 11, "at": 2 }] } """,
        "/targets/shiftCurve/0 wrong-type", "/targets/shiftCurve/1/ratio out-of-range",
        "/targets/shiftCurve/1/rpm missing-member", "/targets/shiftCurve/1/at unknown-member")]
    [InlineData(""" 2200 """, "/targets wrong-type")]
    public void Targets_are_read_strictly(string targets, params string[] expected) =>
        Assert.Equal(expected, Faults($$"""{ "machine": "{{SampleCatalog.Machine}}", "targets": {{targets}} }"""));

    [Fact]
    public void Every_fault_of_a_request_is_told_at_once() =>
        Assert.Equal(
            [
                "/machine unknown-machine", "/targets/engagementRpm wrong-type", "/targets/speed unknown-member",
                "/weights weights-sum", "/altitude unit-needed", "/count out-of-range", "/colour unknown-member",
            ],
            Faults("""
                {
                  "machine": "nobody-knows", "colour": "any", "altitude": 1500, "count": 99,
                  "targets": { "engagementRpm": "fast", "shiftRpm": 7900, "speed": 3 },
                  "weights": { "engagement": 0.5, "shift": 0.6 }
                }
                """));

    [Theory]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("\"machine\"")]
    public void A_body_that_is_no_object_is_the_wrong_type(string json) => Assert.Equal([" wrong-type"], Faults(json));

    [Fact]
    public void A_machine_without_a_fitted_set_asks_for_the_whole_of_every_set()
    {
        MachineProfile known = SampleCatalog.Snapshot.FindMachine(SampleCatalog.Machine)!;
        CatalogItem bare = known.Machine with { Id = "bare", Fitted = null, Baselines = [] };
        CatalogContents contents = SampleCatalog.Contents;
        CatalogSnapshot catalog = new("bare", contents with { Items = [.. contents.Items, bare] });

        Assert.Equal(
            ["/baseline/parts missing-member"],
            Faults($$"""{ "machine": "bare", {{Targets}}, "baseline": { "engagementRpm": 2000, "shiftRpm": 7800 } }""", catalog));
        Assert.Equal(
            [
                "/fitted/driveSpring missing-member", "/fitted/flyweight missing-member",
                "/fitted/drivenSpring missing-member", "/fitted/helix missing-member",
            ],
            Faults($$"""
                {
                  "machine": "bare", {{Targets}}, "fitted": { "hole": "2" },
                  "baseline": { "engagementRpm": 2000, "shiftRpm": 7800 }
                }
                """, catalog));
    }

    [Fact]
    public void More_faults_than_anyone_reads_are_counted()
    {
        string members = string.Join(", ", Enumerable.Range(0, 150).Select(i => $"\"x{i}\": {i}"));
        FaultList faults = new();
        using JsonDocument json = JsonDocument.Parse($$"""{ {{Least}}, {{members}} }""");

        Assert.Null(PickRequestReader.Read(json.RootElement, SampleCatalog.Snapshot, faults));
        Assert.Equal(FaultList.MaxListed, faults.Listed.Count);
        Assert.Equal(150, faults.Count);
        Assert.StartsWith("150 faults were found; errors lists the first 100", Problems.Of(faults).Problem.Detail);
    }

    [Fact]
    public void What_was_sent_is_repeated_and_cut_where_it_is_long()
    {
        using JsonDocument json = JsonDocument.Parse($$"""{ {{Least}}, "x": "{{new string('m', 500)}}" }""");
        FaultList faults = new();
        PickRequestReader.Read(json.RootElement, SampleCatalog.Snapshot, faults);

        Assert.Equal("\"" + new string('m', FaultList.MaxSentLength - 1) + "…", Assert.Single(faults.Listed).Sent);
    }

    private static PickRequest Read(string text)
    {
        FaultList faults = new();
        using JsonDocument json = JsonDocument.Parse(text);
        PickRequest? request = PickRequestReader.Read(json.RootElement, SampleCatalog.Snapshot, faults);
        Assert.Empty(faults.Listed);
        return request!;
    }

    private static string[] Faults(string text, CatalogSnapshot? catalog = null)
    {
        FaultList faults = new();
        using JsonDocument json = JsonDocument.Parse(text);
        Assert.Null(PickRequestReader.Read(json.RootElement, catalog ?? SampleCatalog.Snapshot, faults));
        return [.. faults.Listed.Select(fault => $"{fault.Pointer} {fault.Code.Code}")];
    }
}
