using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.TestKit;

/// <summary>
/// What stands in for a line that is out of stock, found by trying every set that differs in its slot alone; of a driven
/// spring, in its hole too.
/// </summary>
public sealed class PlainAlternates
{
    private readonly CatalogSnapshot catalog;
    private readonly PickRequest request;
    private readonly PartSet fitted;
    private readonly PlainJudge judge;
    private readonly SetUp[] every;

    public PlainAlternates(CatalogSnapshot catalog, PickRequest request)
    {
        this.catalog = catalog;
        this.request = request;
        fitted = request.Fitted ?? request.Machine.Machine.Fitted!;
        judge = new PlainJudge(catalog, request, fitted);
        every = [.. PlainSets.Every(catalog, judge.Machine, request, fitted)];
    }

    /// <summary>The alternate of a line, with the least price of what is bought for it; null where there is none.</summary>
    public (PlainPick Pick, long? Price)? Of(PartSet picked, Purchase line)
    {
        if (line.Stock is not { } stock || stock >= line.Packs)
            return null;
        IEnumerable<SetUp> same = every.Where(s => Differs(s, picked).Length == 0);
        if (Best(same, line.Covers) is { } otherWay)
            return otherWay;
        if (line.Covers.Count > 1)
            return null;
        bool keepsSpring = line.Covers[0] == Slot.DriveSpring
            && (picked.DriveSpring == fitted.DriveSpring || !Holds(line.Id, picked.DriveSpring));
        return Best(
            every.Where(s => Replaces(Differs(s, picked), line.Covers[0])
                && (!keepsSpring || s.DriveSpring.Id == picked.DriveSpring)),
            line.Covers);
    }

    private static bool Replaces(Slot[] differs, Slot slot) =>
        differs.Contains(slot) && differs.All(d => d == slot || (slot == Slot.DrivenSpring && d == Slot.Hole));

    private bool Holds(string id, string part) =>
        id == part || (catalog.FindPart(id) is Kit kit && kit.Contents.Any(l => l.PartId == part));

    private static Slot[] Differs(SetUp set, PartSet from) =>
        [.. Enum.GetValues<Slot>().Where(slot => PlainSets.Changed(slot, set, from))];

    private (PlainPick, long?)? Best(IEnumerable<SetUp> sets, IReadOnlyList<Slot> slots)
    {
        var found = new List<(PlainPick Pick, long? Price)>();
        foreach (SetUp set in sets)
        {
            if (!PlainPrice.TryFromStock(set, slots, fitted, request, catalog, out long? price, out long? beside))
                continue;
            if (request.PriceCeilingMinor is { } ceiling && !(price + beside <= ceiling))
                continue;
            if (judge.Try(set) is { } pick)
                found.Add((pick, price));
        }

        return PlainSearch.ByIds(found.OrderBy(f => f.Pick.RoundedMiss), f => f.Pick)
            .Select(f => ((PlainPick, long?)?)f).FirstOrDefault();
    }
}
