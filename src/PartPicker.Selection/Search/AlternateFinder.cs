using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>For a part that is out of stock: the one in stock that comes closest in its place, all else left as picked.</summary>
/// <remarks>An alternate keeps the rules of the request as every pick does.</remarks>
internal sealed class AlternateFinder(
    PickRequest request, Predictor predictor, Score score, PurchasePlanner planner, CandidatePools pools,
    CancellationToken cancellation)
{
    private readonly RequestRules rules = new(predictor, request, score, planner);

    /// <summary>The line with its alternate, where it is known to be out of stock and serves one slot.</summary>
    public Purchase Complete(Purchase line, SetUp set) =>
        line.Stock is { } stock && stock < line.Packs && line.Covers.Count == 1
            ? line with { Alternate = Closest(line, set) }
            : line;

    private Alternate? Closest(Purchase line, SetUp set)
    {
        var found =
            from other in Replacements(line.Covers[0], set)
            where InStock(other.Part)
            let judged = Judge(other.Set)
            where judged is not null
            orderby Score.Rounded(judged.Value.Miss), other.Part.Id
            select new Alternate(other.Part.Id, Score.Rounded(judged.Value.Miss) / 1000.0, judged.Value.Within);
        return found.FirstOrDefault();
    }

    private IEnumerable<(Part Part, SetUp Set)> Replacements(Slot slot, SetUp set) => slot switch
    {
        Slot.DriveSpring =>
            from s in pools.DriveSprings
            where s.Spring.Id != set.DriveSpring.Id && s.Shims == set.Spring.Shims
            select ((Part)s.Spring, set with { Spring = s }),
        Slot.Flyweight =>
            from f in pools.Flyweights
            where f.Body.Id != set.Flyweight.Body.Id
            select ((Part)f.Body, set with { Flyweight = f }),
        Slot.DrivenSpring =>
            from d in pools.Driven
            where d.Spring.Id != set.Driven.Spring.Id && d.Hole == set.Driven.Hole && d.Helix.Id == set.Driven.Helix.Id
            select ((Part)d.Spring, set with { Driven = d }),
        Slot.Helix =>
            from d in pools.Driven
            where d.Helix.Id != set.Driven.Helix.Id && d.Hole == set.Driven.Hole && d.Spring.Id == set.Driven.Spring.Id
            select ((Part)d.Helix, set with { Driven = d }),
        _ => [],
    };

    private bool InStock(Part part) =>
        request.Outlet!.Offers.GetValueOrDefault(part.Id)?.Stock >= Packs.Needed(part, request.Machine);

    private (double Miss, bool Within)? Judge(SetUp set)
    {
        cancellation.ThrowIfCancellationRequested();
        DriveSide drive = predictor.Drive(set.Spring, set.Flyweight);
        var errors = new double[predictor.Model.Positions.Count];
        if (!rules.Launches(drive)
            || rules.TryErrors(drive, predictor.Driven(set.Driven), errors) is not null
            || rules.TryPrice(set, out _) is not null)
        {
            return null;
        }

        double engagement = score.EngagementError(drive.Engagement.Rpm);
        return (score.Miss(engagement, errors), Score.WithinTolerance(engagement, errors));
    }
}
