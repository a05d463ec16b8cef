using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>The rules of a request that only a whole set can keep: launch rpm, slip margin, price, and that it shifts at all.</summary>
/// <remarks>Whatever is proposed keeps them, a pick as well as an alternate. One thread at a time.</remarks>
internal sealed class RequestRules(Predictor predictor, PickRequest request, Score score, PurchasePlanner planner)
{
    private BalanceFinder? balances;

    /// <summary>Launch rpm with its margin; 0 where none is asked.</summary>
    public double LeastEngagementRpm { get; } = request.LaunchRpm is { } launch ? launch + request.LaunchMarginRpm : 0;

    /// <summary>True where the engagement lies far enough above the launch rpm.</summary>
    public bool Launches(Engagement engagement) => engagement.Rpm >= LeastEngagementRpm;

    /// <summary>The errors at all points; or the rule that the set breaks.</summary>
    public string? TryErrors(DriveSide drive, DrivenSide driven, Span<double> errors)
    {
        balances ??= predictor.Model.Balances(drive, driven, ShiftDirection.Upshift);
        balances.Turn(drive, driven);
        for (int j = 0; j < errors.Length; j++)
        {
            if (balances.Rpm(j) is not { } rpm)
                return PoolRules.DoesNotShift;
            if (request.SlipMargin is { } margin && predictor.Model.UpshiftSlipMargin(rpm, driven, j) < margin)
                return PoolRules.SlipMargin;
            errors[j] = score.ShiftError(j, rpm);
        }

        return null;
    }

    /// <summary>The least price, null when it is not known; or the rule that the set breaks.</summary>
    public string? TryPrice(SetUp set, out long? price)
    {
        if (!planner.TryPrice(set, out price))
            return PoolRules.InStock;
        return request.PriceCeilingMinor is { } ceiling && !(price <= ceiling) ? PoolRules.PriceCeiling : null;
    }

    /// <summary>True where the set stays under the price ceiling when these slots are served by these lines.</summary>
    public bool Affords(SetUp set, IReadOnlyList<Slot> slots, IReadOnlyList<Purchase> lines) =>
        request.PriceCeilingMinor is not { } ceiling
        || lines.Aggregate(planner.PriceBeside(set, slots), (sum, line) => sum + line.PriceMinor) <= ceiling;
}
