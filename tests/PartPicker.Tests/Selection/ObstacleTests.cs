using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>Where nothing meets the target, the closest sets and the reasons; where nothing fits, the reasons alone.</summary>
public sealed class ObstacleTests
{
    [Theory]
    [InlineData(4000, 8000, "engagement", "engages within 100 rpm of 4000; the nearest engages at 2")]
    [InlineData(2000, 5500, "shift-curve", "above the target")]
    [InlineData(2000, 8950, "shift-curve", "below the target")]
    [InlineData(2000, 9500, "rev-limit", "The target asks for 9500 rpm; the engine is limited to 9000 rpm.")]
    [InlineData(9500, 8000, "rev-limit", "The target asks for 9500 rpm; the engine is limited to 9000 rpm.")]
    public void An_unreachable_target_gets_the_closest_sets_and_the_reason(
        double engagementRpm, double shiftRpm, string rule, string words)
    {
        PickRequest request = new Bench().Request() with { Target = ShiftTarget.Flat(engagementRpm, shiftRpm) };
        PickAnswer answer = PartSelection.Pick(new Bench().Snapshot(), request).Answer!;
        AnswerChecks.Holds(request, answer);
        Assert.Equal(10, answer.Picks.Count);
        Assert.All(answer.Picks, p => Assert.False(p.WithinTolerance));
        Obstacle obstacle = Assert.Single(answer.InTheWay, o => o.Rule == rule);
        Assert.Equal(0, obstacle.Count);
        Assert.Contains(words, obstacle.Sentence);
    }

    [Fact]
    public void Sets_that_hold_the_curve_but_engage_elsewhere_are_told_so()
    {
        // A spring that engages right, in a set whose helix does not hold the curve, and the other way round.
        var bench = new Bench();
        PickAnswer answer = bench.Answer(r => r with
        {
            Target = ShiftTarget.Flat(2150, 8000),
            Weights = new ScoreWeights(0, 1),
            Count = 1,
            Tolerances = new Tolerances(100, 150),
        });
        Obstacle obstacle = Assert.Single(answer.InTheWay);
        Assert.Equal("engagement", obstacle.Rule);
    }

    [Theory]
    [InlineData("drive-spring-outside-diameter", "No drive spring of the catalog fits")]
    [InlineData("flyweight-arm-length", "No flyweight of the catalog fits")]
    [InlineData("helix-cam-radius", "No driven spring with hole and helix of the catalog fits")]
    [InlineData("driven-spring-inside-diameter", "No driven spring with hole and helix of the catalog fits")]
    [InlineData("driven-spring-wound-diameter", "No driven spring with hole and helix of the catalog fits")]
    public void Where_no_part_of_a_kind_fits_the_answer_is_empty_and_says_why(string rule, string words)
    {
        var bench = new Bench();
        bench = rule switch
        {
            "drive-spring-outside-diameter" => bench with { DriveClutch = bench.DriveClutch with { CupBore = Mm(57) } },
            "flyweight-arm-length" => bench with { DriveClutch = bench.DriveClutch with { ArmLength = Mm(57) } },
            "helix-cam-radius" => bench with { Helix = bench.Helix with { CamRadius = Mm(43) } },
            "driven-spring-inside-diameter" => bench with { DrivenClutch = bench.DrivenClutch with { HubDiameter = Mm(50) } },
            _ => bench with { DrivenClutch = bench.DrivenClutch with { HubDiameter = Mm(49) } },
        };
        PickAnswer answer = bench.Answer();
        AnswerChecks.Holds(bench.Request(), answer);
        Assert.Empty(answer.Picks);
        Assert.Equal(0, answer.Work.Combinations);
        Assert.Contains(answer.Refusals, r => r.Rule == rule);
        Assert.Contains(answer.InTheWay, o => o.Rule == rule && o.Count == answer.Refusals.Count(r => r.Rule == rule));
        Assert.Contains(answer.InTheWay, o => o.Rule == "empty-pool" && o.Sentence.StartsWith(words, StringComparison.Ordinal));
    }

    [Fact]
    public void Only_the_rules_of_an_empty_slot_stand_in_the_way_of_it()
    {
        var bench = new Bench();
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { ArmLength = Mm(57) },
            Shelf = [bench.DriveSpring with { Id = "wide", OutsideDiameter = Mm(70) }],
        };
        PickAnswer answer = bench.Answer();

        Assert.Contains(answer.Refusals, r => r.Rule == "drive-spring-outside-diameter");
        Assert.Equal(1, answer.RefusedByRule["drive-spring-outside-diameter"]);
        Assert.Equal(["empty-pool", "flyweight-arm-length"], answer.InTheWay.Select(o => o.Rule));
        Assert.Equal(["flyweight-arm-length"], answer.Waivers.Select(w => w.Rule));
    }

    [Fact]
    public void Refusals_name_slot_part_rule_value_and_limit()
    {
        var bench = new Bench();
        bench = bench with { Shelf = [bench.DriveSpring with { Id = "wide", OutsideDiameter = Length.FromInches(2.5), TotalCoils = null, Ends = null }] };
        Refusal refusal = Assert.Single(bench.Answer().Refusals);
        Assert.Equal((Slot.DriveSpring, "wide", "drive-spring-outside-diameter"), (refusal.Slot, refusal.Part, refusal.Rule));
        Assert.Equal((0.0635, 0.062), (refusal.Measured.Value, refusal.Limit.Value));
        Assert.Equal("outside diameter 63.5 mm (2.500 in) exceeds the cup bore 62.0 mm (2.4409 in)", refusal.Sentence);
    }

    [Fact]
    public void Sets_that_engage_below_the_launch_speed_are_counted()
    {
        PickAnswer answer = new Bench().Answer(r => r with { LaunchRpm = 3000, LaunchMarginRpm = 50 });
        Assert.Empty(answer.Picks);
        Obstacle obstacle = Assert.Single(answer.InTheWay);
        Assert.Equal(("launch-rpm", 24L), (obstacle.Rule, obstacle.Count));
        Assert.Contains("launch rpm 3000 plus its margin 50", obstacle.Sentence);

        // The margin counts: the fitted set engages at 2000 rpm.
        Assert.DoesNotContain(Kept(1950, 49.99).InTheWay, o => o.Rule == "launch-rpm");
        Assert.Contains(Kept(1950, 50.01).InTheWay, o => o.Rule == "launch-rpm");

        static PickAnswer Kept(double launch, double margin) => new Bench().Answer(r => r with
        {
            LaunchRpm = launch,
            LaunchMarginRpm = margin,
            Keep = Enum.GetValues<Slot>().ToHashSet(),
            Target = ShiftTarget.Flat(2000, 5000),
        });
    }

    [Fact]
    public void Sets_whose_belt_slips_too_easily_are_counted()
    {
        PickAnswer answer = new Bench().Answer(r => r with { SlipMargin = 4.5 });
        Assert.Empty(answer.Picks);
        Obstacle obstacle = Assert.Single(answer.InTheWay, o => o.Rule == "slip-margin");
        Assert.Equal(24, obstacle.Count);
        Assert.Contains("below 4.5", obstacle.Sentence);
    }

    [Fact]
    public void Sets_that_do_not_shift_are_counted_and_the_fitted_one_has_no_miss()
    {
        // The run was made with arms that this clutch does not take any more; those left are too light.
        var bench = new Bench();
        bench = bench with
        {
            Flyweight = bench.Flyweight with { BodyMass = Mass.FromGrams(10), HeelMasses = [0.004], TipMasses = [0.010] },
            Shelf = [bench.Flyweight with { Id = "heavy", ArmLength = Mm(50) }],
            Run = set => new Baseline(set with { Flyweight = "heavy" }, 2000, [], 8000, default),
        };
        PickAnswer answer = bench.Answer();
        AnswerChecks.Holds(bench.Request(), answer);
        Assert.Empty(answer.Picks);
        Assert.Equal((null, false), (answer.Fitted.Miss, answer.Fitted.WithinTolerance));
        Obstacle obstacle = Assert.Single(answer.InTheWay, o => o.Rule == "does-not-shift");
        Assert.Equal(4, obstacle.Count);
    }

    [Fact]
    public void Long_lists_are_cut_and_the_rest_is_counted()
    {
        var bench = new Bench();
        DriveSpring unknown = bench.DriveSpring with { WireDiameter = null, SolidLength = null };
        bench = bench with
        {
            Shelf =
            [
                .. Enumerable.Range(0, 520).Select(i => bench.DriveSpring with { Id = $"wide-{i}", OutsideDiameter = Mm(70) }),
                .. Enumerable.Range(0, 520).Select(i => unknown with { Id = $"unknown-{i}" }),
            ],
        };
        PickAnswer answer = bench.Answer(r => r with
        {
            Target = ShiftTarget.Flat(4000, 8000),
            Keep = new HashSet<Slot> { Slot.Flyweight, Slot.DrivenSpring, Slot.Hole, Slot.Helix },
            RefusalCount = 40,
        });
        Assert.Equal((40, 480L), (answer.Refusals.Count, answer.RefusalsLeftOut));
        Assert.Equal(520, answer.RefusedByRule["drive-spring-outside-diameter"]);

        // Of each solid length and stress are open, and both are named.
        Assert.Equal((500, 540L), (answer.NotChecked.Count, answer.NotCheckedLeftOut));
        Assert.Equal(["engagement"], answer.InTheWay.Select(o => o.Rule));
    }

    [Fact]
    public void A_slip_margin_that_no_set_has_stands_alone_in_the_way_whatever_else_does_not_fit()
    {
        var bench = new Bench();
        bench = bench with { Shelf = [bench.DriveSpring with { Id = "wide", OutsideDiameter = Mm(70) }] };
        PickAnswer answer = bench.Answer(r => r with { SlipMargin = 9 });
        Assert.Equal(["slip-margin"], answer.InTheWay.Select(o => o.Rule));
        Assert.Equal(1, answer.RefusedByRule["drive-spring-outside-diameter"]);
    }

    [Fact]
    public void By_least_work_too_the_closest_set_is_the_one_of_the_least_miss()
    {
        PickRequest request = new Bench().Request() with { Target = ShiftTarget.Flat(2000, 5500) };
        PickAnswer byMiss = PartSelection.Pick(new Bench().Snapshot(), request).Answer!;
        PickAnswer byWork = PartSelection.Pick(new Bench().Snapshot(), request with { RankBy = RankBy.LeastWork }).Answer!;
        Assert.NotEqual(byMiss.Picks[0].Parts.Hole, byWork.Picks[0].Parts.Hole);
        Assert.Equal(Curve(byMiss), Curve(byWork));

        static string Curve(PickAnswer answer) => Assert.Single(answer.InTheWay, o => o.Rule == "shift-curve").Sentence;
    }

    [Fact]
    public void A_check_that_waits_for_the_machine_names_the_field_of_the_machine()
    {
        const string words = "fill in cupBore of the drive clutch drive-clutch in the catalog";
        var bench = new Bench();
        bench = bench with { DriveClutch = bench.DriveClutch with { CupBore = null } };
        PickAnswer answer = bench.Answer(r => r with { DemandChecked = true });
        Assert.Contains(answer.Refusals, r => r.Rule == "checked-fit" && r.Sentence.EndsWith(words, StringComparison.Ordinal));

        // It may fit: nobody knows.
        Obstacle empty = Assert.Single(answer.InTheWay, o => o.Rule == "empty-pool");
        Assert.StartsWith("No drive spring of the catalog can be checked by every rule", empty.Sentence);
    }

    // The fitted pair engages at 2000 rpm; with lighter masses it would engage higher, but what is kept stays.
    [Theory]
    [InlineData(new[] { Slot.DriveSpring, Slot.Flyweight }, "The kept drive spring with the kept flyweights engages at 2000 rpm, not within 100 rpm of 2400.")]
    [InlineData(new[] { Slot.DriveSpring }, "No flyweights that may be fitted with the kept drive spring engage within 100 rpm of 2400; the nearest engage at 2")]
    [InlineData(new[] { Slot.Flyweight }, "No drive spring that may be fitted with the kept flyweights engages within 100 rpm of 2400; the nearest engages at 2")]
    [InlineData(new[] { Slot.Helix }, "No drive spring with flyweights that may be fitted engages within 100 rpm of 2400; the nearest engages at 2")]
    public void What_is_kept_is_told_apart_from_what_was_searched_for_an_engagement(Slot[] keep, string words)
    {
        PickAnswer answer = new Bench().Answer(r => r with { Target = ShiftTarget.Flat(2400, 8000), Keep = keep.ToHashSet() });
        Assert.StartsWith(words, Assert.Single(answer.InTheWay, o => o.Rule == "engagement").Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void An_engagement_above_the_rpm_of_low_gear_is_told_as_what_no_set_does()
    {
        const string words = "The target asks the belt to take hold at 3100 rpm, above the 3000 rpm to be held in low gear";
        Assert.Contains(
            new Bench().Answer(r => r with { Target = ShiftTarget.Flat(3100, 3000) }).InTheWay,
            o => o.Rule == "engagement" && o.Sentence.StartsWith(words, StringComparison.Ordinal));
        Assert.DoesNotContain(
            new Bench().Answer(r => r with { Target = ShiftTarget.Flat(2900, 3000) }).InTheWay,
            o => o.Sentence.Contains("in low gear", StringComparison.Ordinal));
    }

    [Fact]
    public void A_search_that_ends_early_says_which_limit_ended_it_and_what_to_do()
    {
        PickRequest request = new Bench().Request() with { Target = ShiftTarget.Flat(4000, 8000), WorkLimit = 1 };
        Assert.Matches(
            "^The search reached its workLimit of 1 before every set was covered; what is left misses by [0-9.]+ or more\\. "
            + "Keep a slot or exclude parts, or raise workLimit\\.$",
            Assert.Single(PartSelection.Pick(new Bench().Snapshot(), request).Answer!.InTheWay, o => o.Rule == "work-limit").Sentence);
        Outcome<PickAnswer> late = PartSelection.Pick(
            new Bench().Snapshot(), request with { WorkLimit = PickRequest.StandardWorkLimit }, timeUp: new CancellationToken(canceled: true));
        Assert.Matches(
            "^The time was up before every set was covered; .* Keep a slot or exclude parts, or ask again\\.$",
            Assert.Single(late.Answer!.InTheWay, o => o.Rule == "work-limit").Sentence);
    }

    [Fact]
    public void A_kept_part_that_is_refused_is_not_called_the_whole_catalog()
    {
        var bench = new Bench();
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { CupBore = null, TipClearanceRadius = null },
            Helix = bench.Helix with { CamRadius = null },
        };
        string[] empty =
        [
            .. bench.Answer(r => r with { DemandChecked = true, Keep = new HashSet<Slot> { Slot.DriveSpring, Slot.Helix } }).InTheWay
                .Where(o => o.Rule == "empty-pool").Select(o => o.Sentence),
        ];
        Assert.Equal(
        [
            "The kept drive spring is refused: the refusals say why.",
            "No flyweight of the catalog can be checked by every rule, as the request demands: the refusals say why, part by part.",
            "No driven spring with hole and helix can be fitted together with the kept helix: the refusals say why, part by part.",
        ], empty);
    }

    [Fact]
    public void Every_field_that_a_rule_waits_for_is_one_of_that_piece_of_the_machine()
    {
        var bench = new Bench();
        MachineProfile bare = (bench with
        {
            DriveClutch = bench.DriveClutch with
            {
                CupBore = null,
                PostDiameter = null,
                SpringSeat = null,
                PinDiameter = null,
                ArmLength = null,
                TipClearanceRadius = null,
            },
            DrivenClutch = bench.DrivenClutch with { HubDiameter = null, WindingHand = null, Legs = null, HelixMount = null },
        }).Profile();
        MachineModel machine = MachineModel.Create(bare, [])!;
        FitCheck[] waiting =
        [
            .. DriveSpringRules.All.Select(r => r.Check(bench.DriveSpring, machine)),
            .. FlyweightRules.All.Select(r => r.Check(bench.Flyweight, machine)),
            .. DrivenSpringRules.All.Select(r => r.Check(bench.DrivenSpring, machine)),
            .. HelixRules.All.Select(r => r.Check(bench.Helix, machine)),
        ];
        waiting = [.. waiting.Where(c => c.Verdict == FitVerdict.NotChecked)];
        Assert.Equal(10, waiting.Length);
        string[] fields =
        [
            .. FieldRegistry.For(ItemKind.DriveClutch).Select(f => $"fill in {f.Name} of the drive clutch drive-clutch in the catalog"),
            .. FieldRegistry.For(ItemKind.DrivenClutch).Select(f => $"fill in {f.Name} of the driven clutch driven-clutch in the catalog"),
        ];
        Assert.All(waiting, c => Assert.Contains(c.Remedy, fields));
    }

    [Fact]
    public void The_refusals_of_the_slot_that_is_left_empty_stand_first()
    {
        var bench = new Bench();
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { ArmLength = Mm(57) },
            Shelf = [.. Enumerable.Range(0, 5).Select(i => bench.DriveSpring with { Id = $"wide-{i}", OutsideDiameter = Mm(70) })],
        };
        PickAnswer answer = bench.Answer(r => r with { RefusalCount = 1 });
        Assert.Equal((Slot.Flyweight, "flyweight-arm-length"), (answer.Refusals[0].Slot, answer.Refusals[0].Rule));
        Assert.Equal(5, answer.RefusalsLeftOut);
    }

    [Fact]
    public void The_rules_of_the_request_are_waived_first_and_those_not_tried_are_counted()
    {
        // Eight rules of fit refuse two candidates or more each; the one spring that fits is excluded.
        var bench = new Bench();
        DrivenSpring wrong = bench.DrivenSpring with { WindingHand = WindingHand.Left, Legs = SpringLegs.Hooked, InsideDiameter = Mm(40) };
        DrivenSpring tight = bench.DrivenSpring with { TwistLimitDeg = 10, BodyCoils = 20, InsideDiameter = Mm(44.1) };
        Helix strange = bench.Helix with { CamRadius = Mm(40), Mount = "bolted" };
        bench = bench with
        {
            Shelf =
            [
                wrong with { Id = "wrong-1" }, wrong with { Id = "wrong-2" }, tight with { Id = "tight-1" }, tight with { Id = "tight-2" },
                strange with { Id = "strange-1" }, strange with { Id = "strange-2" },
            ],
        };
        PickAnswer answer = bench.Answer(r => r with { Exclude = new HashSet<string> { "vs" } });
        Assert.Equal(9, answer.RefusedByRule.Count);
        Assert.Equal(1, answer.RefusedByRule.Values.Min());
        Assert.Equal("excluded", answer.Waivers[0].Rule);
        Assert.Equal(1, answer.WaiversLeftOut);
    }

    [Fact]
    public void Every_name_that_stands_in_the_way_can_be_provoked()
    {
        var bench = new Bench();
        var outlet = new Outlet("shop", "CAD", new Dictionary<string, Offer>());
        DriveSpring dear = bench.DriveSpring with { Id = "dear" };
        string[] said =
        [
            .. new Bench().Answer(r => r with { Target = ShiftTarget.Flat(9500, 8000) }).InTheWay.Select(o => o.Rule),
            .. new Bench().Answer(r => r with { Target = ShiftTarget.Flat(2000, 5500) }).InTheWay.Select(o => o.Rule),
            .. new Bench().Answer(r => r with { WorkLimit = 1 }).InTheWay.Select(o => o.Rule),
            .. new Bench().Answer(r => r with { LaunchRpm = 3000 }).InTheWay.Select(o => o.Rule),
            .. new Bench().Answer(r => r with { SlipMargin = 9 }).InTheWay.Select(o => o.Rule),
            .. (bench with { Shelf = [dear] }).Answer(r => r with
            {
                Exclude = new HashSet<string> { "ds" }, Outlet = outlet, PriceCeilingMinor = 1,
            }).InTheWay.Select(o => o.Rule),
            .. (bench with { Shelf = [dear] }).Answer(r => r with
            {
                Exclude = new HashSet<string> { "ds" }, Outlet = outlet, InStockOnly = true,
            }).InTheWay.Select(o => o.Rule),
            .. (bench with { Shelf = [dear with { SupersededBy = "ds" }] }).Answer(r => r with { Exclude = new HashSet<string> { "ds" } })
                .InTheWay.Select(o => o.Rule),
            .. (bench with { Helix = bench.Helix with { CamRadius = null } }).Answer(r => r with { DemandChecked = true })
                .InTheWay.Select(o => o.Rule),
            "does-not-shift", // Its own test above.
        ];
        Assert.Empty(RuleNames.OfTarget.Concat(RuleNames.OfRequest).Select(n => n.Name).Except(said));
        Assert.Equal(RuleNames.Obstacles.Count, RuleNames.Obstacles.DistinctBy(n => n.Name).Count());
        Assert.All(RuleNames.Obstacles, n => Assert.NotEmpty(n.Meaning));
    }
}
