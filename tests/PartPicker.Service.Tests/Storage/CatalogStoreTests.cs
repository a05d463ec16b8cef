using System.Data.Common;
using PartPicker.Parts;
using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.Storage;

/// <summary>What every catalog store must do, whatever database stands behind it.</summary>
public abstract class CatalogStoreTests
{
    private static readonly DateTimeOffset Now = new(2031, 5, 6, 7, 8, 9, TimeSpan.FromHours(2));

    /// <summary>A store over the same kept data each time that it is asked.</summary>
    private protected abstract ICatalogStore Open();

    public static TheoryData<ItemKind> Kinds => [.. Enum.GetValues<ItemKind>()];

    [Fact]
    public void A_new_store_holds_no_revision() => Assert.Null(Open().LoadNewest());

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_field_of_every_kind_comes_back_exactly(ItemKind kind)
    {
        CatalogContents contents = SampleItems.Contents() with
        {
            Items = [.. Enum.GetValues<ItemKind>().Select(k => SampleItems.Full(k))],
        };
        Open().Save(contents, Now);

        CatalogSnapshot read = Open().LoadNewest()!;

        CatalogItem wrote = contents.Items.Single(i => i.Kind == kind);
        CatalogItem back = Find(read, kind);
        Assert.Equal(wrote.GetType(), back.GetType());
        foreach (Field field in FieldRegistry.For(kind))
            Assert.Equal(field.Get(wrote), field.Get(back));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_sample_of_a_kind_leaves_no_property_unset(ItemKind kind)
    {
        CatalogItem full = SampleItems.Full(kind);
        CatalogItem blank = FieldRegistry.Blank(kind);

        foreach (var property in full.GetType().GetProperties().Where(p => p.SetMethod is not null))
            Assert.NotEqual(property.GetValue(blank), property.GetValue(full));
    }

    [Fact]
    public void Origins_fitted_set_and_baselines_come_back()
    {
        Open().Save(SampleItems.Contents(), Now);

        MachineProfile read = Open().LoadNewest()!.FindMachine(SampleItems.IdOf(ItemKind.Machine))!;

        foreach (MachinePiece piece in read.Pieces)
            Assert.Equal(((MachinePiece)SampleItems.Full(piece.Kind)).Origins, piece.Origins);
        var wrote = (Machine)SampleItems.Full(ItemKind.Machine);
        AssertEqual(wrote.Fitted!, read.Machine.Fitted!);
        Assert.Equal(wrote.Baselines.Count, read.Machine.Baselines.Count);
        foreach ((Baseline expected, Baseline actual) in wrote.Baselines.Zip(read.Machine.Baselines))
        {
            AssertEqual(expected.Parts, actual.Parts);
            Assert.Equal(expected.EngagementRpm, actual.EngagementRpm);
            Assert.Equal(expected.Shift, actual.Shift);
            Assert.Equal(expected.FlatShiftRpm, actual.FlatShiftRpm);
            Assert.Equal(expected.Air, actual.Air);
        }
    }

    [Fact]
    public void Outlets_and_offers_come_back_with_unknown_prices_still_unknown()
    {
        Open().Save(SampleItems.Contents(), Now);

        CatalogSnapshot read = Open().LoadNewest()!;

        Assert.Equal(["east", "north"], read.Outlets.Select(o => o.Id));
        foreach (Outlet wrote in SampleItems.Contents().Outlets)
        {
            Outlet back = read.FindOutlet(wrote.Id)!;
            Assert.Equal(wrote.Currency, back.Currency);
            Assert.Equal(wrote.Offers, back.Offers);
        }
    }

    [Fact]
    public void A_revision_is_twelve_hex_digits_and_the_same_when_read_again()
    {
        CatalogSnapshot saved = Open().Save(SampleItems.Contents(), Now);

        Assert.Matches("^[0-9a-f]{12}$", saved.Revision);
        Assert.Equal(saved.Revision, Open().LoadNewest()!.Revision);
    }

    [Fact]
    public void The_order_of_rows_does_not_change_the_revision()
    {
        CatalogContents contents = SampleItems.Contents();
        string revision = Open().Save(contents, Now).Revision;
        CatalogContents reordered = new(
            [.. contents.Items.Reverse().Select(Reordered)],
            [.. contents.Outlets.Reverse().Select(o => o with { Offers = Reversed(o.Offers) })]);

        Assert.Equal(revision, Open().Save(reordered, Now).Revision);
    }

    [Fact]
    public void Contents_read_back_and_saved_again_keep_their_revision()
    {
        CatalogSnapshot first = Open().Save(SampleItems.Contents(), Now);
        CatalogSnapshot read = Open().LoadNewest()!;
        CatalogContents again = new(
            [.. read.All<Part>(), .. read.Machines.SelectMany(m => m.Pieces)], [.. read.Outlets]);

        Assert.Equal(first.Revision, Open().Save(again, Now).Revision);
    }

    [Fact]
    public void The_last_digit_of_one_value_changes_the_revision()
    {
        string revision = Open().Save(SampleItems.Contents(firstLoad: 123.4), Now).Revision;

        Assert.NotEqual(revision, Open().Save(SampleItems.Contents(Math.BitIncrement(123.4)), Now).Revision);
    }

    [Theory]
    [InlineData("currency")]
    [InlineData("price")]
    [InlineData("stock")]
    [InlineData("price for stock")]
    public void A_changed_offer_changes_the_revision(string what)
    {
        string part = SampleItems.IdOf(ItemKind.Helix);
        Outlet outlet = new("north", "CAD", new Dictionary<string, Offer> { [part] = new(5, null) });
        Outlet changed = what switch
        {
            "currency" => outlet with { Currency = "USD" },
            "price" => outlet with { Offers = new Dictionary<string, Offer> { [part] = new(6, null) } },
            "stock" => outlet with { Offers = new Dictionary<string, Offer> { [part] = new(5, 5) } },
            _ => outlet with { Offers = new Dictionary<string, Offer> { [part] = new(null, 5) } },
        };
        CatalogContents contents = SampleItems.Contents();

        string before = Open().Save(contents with { Outlets = [outlet] }, Now).Revision;

        Assert.NotEqual(before, Open().Save(contents with { Outlets = [changed] }, Now).Revision);
    }

    [Fact]
    public void The_newest_revision_is_the_one_that_was_saved_last_even_when_it_was_kept_before()
    {
        string first = Open().Save(SampleItems.Contents(1), Now).Revision;
        string second = Open().Save(SampleItems.Contents(2), Now).Revision;
        Assert.Equal(second, Open().LoadNewest()!.Revision);

        Assert.Equal(first, Open().Save(SampleItems.Contents(1), Now.AddDays(-1)).Revision);

        Assert.Equal(first, Open().LoadNewest()!.Revision);
    }

    [Fact]
    public void Contents_that_name_a_missing_piece_are_refused_and_nothing_is_written()
    {
        CatalogContents contents = SampleItems.Contents();
        CatalogContents broken = contents with { Items = [.. contents.Items.Where(i => i.Kind != ItemKind.Belt)] };

        ArgumentException e = Assert.Throws<ArgumentException>(() => Open().Save(broken, Now));

        Assert.Contains(SampleItems.IdOf(ItemKind.Belt), e.Message);
        Assert.Null(Open().LoadNewest());
    }

    [Fact]
    public void An_offer_of_a_part_that_is_not_there_is_refused_and_nothing_is_written()
    {
        Outlet outlet = new("north", "CAD", new Dictionary<string, Offer> { ["nowhere"] = new(1, 1) });

        Assert.ThrowsAny<DbException>(() => Open().Save(SampleItems.Contents() with { Outlets = [outlet] }, Now));

        Assert.Null(Open().LoadNewest());
    }

    [Fact]
    public async Task Two_stores_that_save_at_once_both_succeed()
    {
        ICatalogStore one = Open();
        ICatalogStore other = Open();

        string[] revisions = await Task.WhenAll(Enumerable.Range(0, 8).Select(i => Task.Run(
            () => (i % 2 == 0 ? one : other).Save(SampleItems.Contents(i), Now).Revision)));

        Assert.Equal(8, revisions.Distinct().Count());
        Assert.Contains(Open().LoadNewest()!.Revision, revisions);
    }

    private static CatalogItem Find(CatalogSnapshot snapshot, ItemKind kind)
    {
        string id = SampleItems.IdOf(kind);
        return (CatalogItem?)snapshot.FindPart(id)
            ?? snapshot.FindMachine(SampleItems.IdOf(ItemKind.Machine))!.Pieces.Single(p => p.Id == id);
    }

    private static CatalogItem Reordered(CatalogItem item) => item switch
    {
        Machine machine => machine with
        {
            Origins = Reversed(machine.Origins),
            Fitted = machine.Fitted! with { StationMasses = Reversed(machine.Fitted!.StationMasses) },
        },
        MachinePiece piece => piece with { Origins = Reversed(piece.Origins) },
        _ => item,
    };

    private static Dictionary<TKey, TValue> Reversed<TKey, TValue>(IReadOnlyDictionary<TKey, TValue> entries)
        where TKey : notnull => new(entries.Reverse());

    private static void AssertEqual(PartSet expected, PartSet actual)
    {
        Assert.Equal(expected.StationMasses, actual.StationMasses);
        Assert.Equal(expected with { StationMasses = actual.StationMasses }, actual);
    }
}
