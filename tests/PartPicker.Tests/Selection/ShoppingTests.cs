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
        Assert.Equal(other, Line(free)?.Alternate?.Id);

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
