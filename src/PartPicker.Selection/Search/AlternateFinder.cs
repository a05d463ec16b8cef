using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>
/// For a line that is out of stock: the same set bought from stock another way; or, where the line serves one slot, the
/// set that misses by the least among those that differ in this slot alone and whose slot the stock can serve. Another
/// driven spring may go into another hole: it costs nothing and seldom is the best one the same.
/// </summary>
/// <remarks>
/// An alternate keeps the rules of the request as every pick does, and buys something: what is already fitted is none.
/// Shims are replaced by shims under the same spring. Of equal misses the first of the pools counts.
/// </remarks>
internal sealed class AlternateFinder(
    PickRequest request, Predictor predictor, Score score, PurchasePlanner planner, CandidatePools pools,
    CancellationToken cancellation)
{
    /// <summary>Most choices that are tried in the place of one; of more, as many evenly spaced over all.</summary>
    public const int MaxTried = 2_000;

    private readonly RequestRules rules = new(predictor, request, score, planner);

    // Picks that share all but one slot share what can stand in for it.
    private readonly Dictionary<(Slot Slot, bool ShimsAlone, SetUp First), Alternate?> found = [];
    private readonly Dictionary<(string Part, FittedShims? Shims), bool> buyable = [];

    /// <summary>Choices beyond <see cref="MaxTried"/> that were not tried; where picks share a place they count once.</summary>
    public long LeftOut { get; private set; }

    /// <summary>The line with its alternate, where it is known to be out of stock.</summary>
    public Purchase Complete(Purchase line, SetUp set) => line.Stock < line.Packs
        ? line with
        {
            Alternate = Judge(set, line.Covers)
                ?? (line.Covers is [var slot] ? Closest(slot, planner.ForShimsAlone(line, set), set) : null),
        }
        : line;

    private Alternate? Closest(Slot slot, bool shimsAlone, SetUp set)
    {
        IEnumerable<SetUp> choices = Choices(slot, shimsAlone, set);
        (Slot, bool, SetUp) place = (slot, shimsAlone, choices.First());
        if (found.TryGetValue(place, out Alternate? closest))
            return closest;
        SetUp[] inStock = [.. choices.Where(c => Buyable(slot, c))];
        int tried = Math.Min(inStock.Length, MaxTried);
        LeftOut += inStock.Length - tried;
        closest = Enumerable.Range(0, tried)
            .Select(i => Judge(inStock[(long)i * inStock.Length / tried], [slot]))
            .OfType<Alternate>()
            .MinBy(a => a.Miss);
        found.Add(place, closest);
        return closest;
    }

    // The set itself is among them; since the stock does not serve it, or not under the ceiling, it never comes back.
    private IEnumerable<SetUp> Choices(Slot slot, bool shimsAlone, SetUp set) => slot switch
    {
        Slot.DriveSpring =>
            from s in pools.DriveSprings
            where !shimsAlone || s.Spring.Id == set.DriveSpring.Id
            select set with { Spring = s },
        Slot.Flyweight => pools.Flyweights.Select(f => set with { Flyweight = f }),
        Slot.DrivenSpring =>
            from d in pools.Driven
            where d.Helix.Id == set.Driven.Helix.Id
            select set with { Driven = d },
        Slot.Helix =>
            from d in pools.Driven
            where d.Hole == set.Driven.Hole && d.Spring.Id == set.Driven.Spring.Id
            select set with { Driven = d },
        _ => throw new ArgumentOutOfRangeException(nameof(slot), slot, "Nothing is bought for this slot."),
    };

    // Asked once of each part, since a body alone may come with many thousand choices of masses.
    private bool Buyable(Slot slot, SetUp set)
    {
        (string, FittedShims?) part = slot switch
        {
            Slot.DriveSpring => (set.DriveSpring.Id, set.Spring.Shims),
            Slot.Flyweight => (set.Flyweight.Body.Id, null),
            Slot.DrivenSpring => (set.Driven.Spring.Id, null),
            _ => (set.Driven.Helix.Id, null),
        };
        if (!buyable.TryGetValue(part, out bool bought))
            buyable.Add(part, bought = planner.FromStock(set, [slot]) is { Count: > 0 });
        return bought;
    }

    /// <summary>The set with these slots bought from stock; null where nothing is bought so, or a rule is broken.</summary>
    private Alternate? Judge(SetUp set, IReadOnlyList<Slot> slots)
    {
        cancellation.ThrowIfCancellationRequested();
        if (planner.FromStock(set, slots) is not { Count: > 0 } toBuy || !rules.Affords(set, slots, toBuy))
            return null;
        DriveSide drive = predictor.Drive(set.Spring, set.Flyweight);
        var errors = new double[predictor.Model.Positions.Count];
        if (!rules.Launches(drive.Engagement) || rules.TryErrors(drive, predictor.Driven(set.Driven), errors) is not null)
            return null;
        double engagement = score.EngagementError(drive.Engagement.Rpm);
        return new Alternate(
            set.Ids, Score.Rounded(score.Miss(engagement, errors)) / 1000.0, Score.WithinTolerance(engagement, errors), toBuy);
    }
}
