using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>What is bought for a set, and what stands in for what is out of stock.</summary>
public sealed class ShoppingTests
{
    private static readonly HashSet<Slot> DrivenSide = [Slot.DrivenSpring, Slot.Hole, Slot.Helix];

    [Fact]
    public void Packs_of_a_kit_count_and_the_rest_is_bought_singly()
    {
        IReadOnlyList<Purchase> lines = Arms(new(5000, 9), kit: new(6000, 9));
        Assert.Equal([("kit", 1, 6000L), ("fw-2", 1, 5000L)], lines.Select(l => (l.Id, l.Packs, l.PriceMinor!.Value)));
    }

    [Fact]
    public void An_excluded_kit_is_not_bought()
    {
        Assert.Equal("kit", Assert.Single(Arms(new(5000, 9), kit: new(6000, 9), kitPacks: 3)).Id);
        IReadOnlyList<Purchase> lines = Arms(new(5000, 9), kit: new(6000, 9), WithoutKit, kitPacks: 3);
        Assert.Equal([("fw-2", 3, 15_000L)], lines.Select(l => (l.Id, l.Packs, l.PriceMinor!.Value)));
    }

    [Fact]
    public void Stock_alone_and_in_a_kit_counts_together()
    {
        Assert.Equal(["kit", "fw-2"], InStock(single: 1).Select(l => l.Id));
        Assert.Empty(InStock(single: 0));

        static IReadOnlyList<Purchase> InStock(int single) =>
            Arms(new(5000, single), kit: new(6000, 1), r => r with { InStockOnly = true });
    }

    [Fact]
    public void A_replaced_or_excluded_kit_is_no_stock()
    {
        Assert.DoesNotContain("fw-2", OutOfStock(null));
        Assert.Contains("fw-2", OutOfStock("fw-2"));
        Assert.Contains("fw-2", OutOfStock(null, WithoutKit));

        static IEnumerable<string> OutOfStock(string? supersededBy, Func<PickRequest, PickRequest>? change = null) =>
            AnswerOnArms(
                new(5000, 1), new(6000, 1), r => (change ?? (same => same))(r with { InStockOnly = true }), supersededBy, kitPacks: 3)
                .Refusals.Where(r => r.Rule == "in-stock").Select(r => r.Part);
    }

    [Theory]
    [InlineData("launch")]
    [InlineData("slip")]
    [InlineData("price")]
    public void An_alternate_keeps_the_rules_of_the_request(string rule)
    {
        var bench = new Bench();
        bench = bench with
        {
            Shelf =
            [
                bench.DriveSpring with { Id = "ds-2", Rate = ForcePerLength.FromNewtonsPerMillimeter(20) },
                bench.DriveSpring with { Id = "ds-3", Rate = ForcePerLength.FromNewtonsPerMillimeter(17) },
                bench.DrivenSpring with { Id = "vs-2", Rate = ForcePerLength.FromNewtonsPerMillimeter(10) },
                bench.DrivenSpring with { Id = "vs-3", Rate = ForcePerLength.FromNewtonsPerMillimeter(5) },
            ],
        };
        PickRequest free = bench.Request() with
        {
            Count = 50,
            Keep = rule == "slip"
                ? new HashSet<Slot> { Slot.DriveSpring, Slot.Flyweight, Slot.Hole, Slot.Helix }
                : new HashSet<Slot>(DrivenSide) { Slot.Flyweight },
            Outlet = new Outlet("corner", "EUR", new Dictionary<string, Offer>
            {
                ["ds-2"] = new(1000, 0), ["ds-3"] = new(9000, 1), ["vs-2"] = new(1000, 0), ["vs-3"] = new(1000, 1),
            }),
        };
        (string pick, string other) = rule == "slip" ? ("vs-2", "vs-3") : ("ds-2", "ds-3");
        Assert.Equal(other, Assert.Single(Line(free)!.Alternate!.ToBuy).Id);

        Pick alternate = Set(free, other)!;
        Pick picked = Set(free, pick)!;
        PickRequest bound = rule switch
        {
            "launch" => free with
            {
                LaunchRpm = (alternate.Prediction.EngagementRpm + picked.Prediction.EngagementRpm) / 2,
                LaunchMarginRpm = 0,
            },
            "slip" => free with { SlipMargin = (Slip(alternate) + Slip(picked)) / 2 },
            _ => free with { PriceCeilingMinor = 5000 },
        };
        Assert.NotNull(Line(bound));
        Assert.Null(Line(bound)!.Alternate);

        Purchase? Line(PickRequest request) => Set(request, pick)?.ToBuy.Single();

        Pick? Set(PickRequest request, string id) => PartSelection.Pick(bench.Snapshot(), request).Answer!.Picks
            .SingleOrDefault(p => p.Parts.DriveSpring == id || p.Parts.DrivenSpring == id);

        static double Slip(Pick of) => of.Prediction.Curve.Min(p => p.Upshift!.SlipMargin)!.Value;
    }

    [Fact]
    public void A_kit_that_is_out_of_stock_gives_way_to_its_parts_one_by_one()
    {
        Purchase kit = Assert.Single(Arms(new(5000, 3), kit: new(6000, 0), kitPacks: 3));
        Assert.Equal("kit", kit.Id);
        Assert.Equal("fw-2", kit.Alternate!.Parts.Flyweight);
        Assert.Equal([("fw-2", 3, 15_000L)], kit.Alternate.ToBuy.Select(l => (l.Id, l.Packs, l.PriceMinor!.Value)));

        // The price of what is bought counts, and not that of what cannot be had.
        Assert.Null(Assert.Single(Arms(
            new(5000, 3), kit: new(6000, 0), r => r with { PriceCeilingMinor = 14_999 }, kitPacks: 3)).Alternate);
    }

    [Fact]
    public void A_kit_for_two_slots_has_no_other_set_in_its_place()
    {
        var bench = new Bench();
        bench = bench with
        {
            Shelf =
            [
                bench.Helix with { Id = "hx-2", HelixDeg = 42 },
                bench.Helix with { Id = "hx-3", HelixDeg = 42.1 },
                bench.DrivenSpring with { Id = "vs-2", Rate = ForcePerLength.FromNewtonsPerMillimeter(10) },
                new Kit { Id = "kit", Contents = [new KitLine("hx-2", 1), new KitLine("vs-2", 1)] },
            ],
        };
        Assert.Null(Kit(stock: 0));
        Assert.Equal(["vs-2", "hx-2"], Kit(stock: 1)!.ToBuy.Select(l => l.Id));

        Alternate? Kit(int stock)
        {
            PickRequest request = bench.Request() with
            {
                Count = 50,
                Keep = new HashSet<Slot> { Slot.DriveSpring, Slot.Flyweight, Slot.Hole },
                Outlet = new Outlet("corner", "EUR", new Dictionary<string, Offer>
                {
                    ["hx-2"] = new(9000, stock), ["hx-3"] = new(9000, 1), ["vs-2"] = new(9000, 1), ["kit"] = new(1000, 0),
                }),
            };
            Pick pick = PartSelection.Pick(bench.Snapshot(), request).Answer!.Picks
                .Single(p => p.Parts is { Helix: "hx-2", DrivenSpring: "vs-2" });
            Purchase line = Assert.Single(pick.ToBuy);
            Assert.Equal([Slot.DrivenSpring, Slot.Helix], line.Covers);
            return line.Alternate;
        }
    }

    [Fact]
    public void Shims_out_of_stock_are_replaced_by_shims_under_the_same_spring()
    {
        var bench = new Bench();
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { ShimLimit = 2 },
            Shelf =
            [
                Thick("sh-1", 1.5), Thick("sh-2", 0.5),
                bench.DriveSpring with { Id = "ds-2", Rate = ForcePerLength.FromNewtonsPerMillimeter(19.01) },
            ],
        };
        PickRequest request = bench.Request() with
        {
            Count = 50,
            Keep = new HashSet<Slot>(DrivenSide) { Slot.Flyweight },
            Outlet = new Outlet("corner", "EUR", new Dictionary<string, Offer>
            {
                ["sh-1"] = new(100, 0), ["sh-2"] = new(100, 9), ["ds-2"] = new(100, 9),
            }),
        };
        Pick pick = PartSelection.Pick(bench.Snapshot(), request).Answer!.Picks
            .Single(p => p.Parts.DriveSpring == "ds" && p.Parts.Shims == new FittedShims("sh-1", 1));
        Alternate alternate = Assert.Single(pick.ToBuy).Alternate!;
        Assert.Equal("ds", alternate.Parts.DriveSpring);
        Assert.Equal("sh-2", alternate.Parts.Shims!.ShimId);
        Assert.Equal("sh-2", Assert.Single(alternate.ToBuy).Id);

        Shim Thick(string id, double mm) => new()
        {
            Id = id, Thickness = Bench.Mm(mm), OutsideDiameter = Bench.Mm(58), InsideDiameter = Bench.Mm(46),
        };
    }

    [Fact]
    public void More_choices_than_are_tried_are_spread_over_all_and_counted()
    {
        var bench = new Bench();
        bench = bench with
        {
            Shelf =
            [
                bench.DriveSpring with { Id = "ds-out" },
                .. Enumerable.Range(0, 2 * AlternateFinder.MaxTried).Select(i =>
                    bench.DriveSpring with { Id = $"ds-{i:0000}", Rate = ForcePerLength.FromNewtonsPerMillimeter(22 - i * 0.000625) }),
            ],
        };
        var offers = bench.Shelf.ToDictionary(p => p.Id, _ => new Offer(1000, 1));
        offers["ds-out"] = new Offer(1000, 0);
        PickRequest request = bench.Request() with
        {
            Count = 1,
            Tolerances = new Tolerances(Tolerances.Min, Tolerances.Min),
            Keep = new HashSet<Slot>(DrivenSide) { Slot.Flyweight },
            Exclude = new HashSet<string> { "ds" },
            Outlet = new Outlet("corner", "EUR", offers),
        };
        PickAnswer answer = PartSelection.Pick(bench.Snapshot(), request).Answer!;
        Purchase line = Assert.Single(Assert.Single(answer.Picks).ToBuy);
        Assert.Equal("ds-out", line.Id);
        Assert.Equal(AlternateFinder.MaxTried, answer.AlternatesLeftOut);
        Assert.Equal("ds-3998", line.Alternate!.Parts.DriveSpring);
    }

    [Fact]
    public void Masses_that_differ_from_what_is_fitted_are_listed_for_every_arm()
    {
        var bench = new Bench();
        bench = bench with { Shelf = [bench.Flyweight with { Id = "fw-2" }] };
        var keep = new HashSet<Slot>(DrivenSide) { Slot.DriveSpring };
        IReadOnlyList<Pick> picks = bench.Answer(r => r with { Count = 50, Keep = keep }).Picks;

        Assert.Empty(Masses("fw", 0.004, 0.010));
        Assert.Equal([new(StationName.Heel, 0, 3), new(StationName.Tip, 0.012, 3)], Masses("fw", 0, 0.012));

        // The masses of one body stay with it.
        Assert.Equal([new(StationName.Heel, 0.004, 3), new(StationName.Tip, 0.010, 3)], Masses("fw-2", 0.004, 0.010));
        Assert.Equal([new(StationName.Tip, 0.010, 3)], Masses("fw-2", 0, 0.010));

        IReadOnlyList<MassToFit> Masses(string body, double heel, double tip) => picks.Single(p =>
            p.Parts.Flyweight == body
            && p.Parts.StationMasses[StationName.Heel] == heel && p.Parts.StationMasses[StationName.Tip] == tip).MassesToFit;
    }

    private static PickRequest WithoutKit(PickRequest request) => request with { Exclude = new HashSet<string> { "kit" } };

    private static IReadOnlyList<Purchase> Arms(
        Offer single, Offer kit, Func<PickRequest, PickRequest>? change = null, int kitPacks = 2) =>
        AnswerOnArms(single, kit, change, null, kitPacks).Picks.FirstOrDefault(p => p.Parts.Flyweight == "fw-2")?.ToBuy ?? [];

    // Three arms, sold one by one, or some of them in a kit.
    private static PickAnswer AnswerOnArms(
        Offer single, Offer kit, Func<PickRequest, PickRequest>? change, string? supersededBy, int kitPacks)
    {
        var bench = new Bench();
        bench = bench with
        {
            Shelf =
            [
                bench.Flyweight with { Id = "fw-2", SoldAs = SoldAs.Each },
                new Kit { Id = "kit", Contents = [new KitLine("fw-2", kitPacks)], SupersededBy = supersededBy },
            ],
        };
        PickRequest request = bench.Request() with
        {
            Count = 50,
            Keep = new HashSet<Slot>(DrivenSide) { Slot.DriveSpring },
            Outlet = new Outlet("corner", "EUR", new Dictionary<string, Offer> { ["fw-2"] = single, ["kit"] = kit }),
        };
        return PartSelection.Pick(bench.Snapshot(), change is null ? request : change(request)).Answer!;
    }
}
