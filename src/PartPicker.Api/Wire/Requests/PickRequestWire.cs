using System.ComponentModel.DataAnnotations;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>Which parts for this machine and these rpm?</summary>
internal sealed record PickRequestWire : IRequestWire
{
    /// <summary>Id of the machine, from GET /v1/machines.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public required string Machine { get; init; }

    /// <summary>The rpm that are wanted.</summary>
    public required TargetsWire Targets { get; init; }

    /// <summary>
    /// By how many rpm an answer may miss and still count as a hit; 100 each when left out.
    /// </summary>
    public TolerancesWire? Tolerances { get; init; }

    /// <summary>
    /// How engagement and shift curve share the score; 0.3 and 0.7 when left out. Others are refused where another device
    /// than the belt starts the machine: there the curve alone counts.
    /// </summary>
    public WeightsWire? Weights { get; init; }

    /// <summary>
    /// What is fitted now; members left out come from the set that the machine was delivered with.
    /// </summary>
    public SetWire? Fitted { get; init; }

    /// <summary>
    /// A measured run that ties the model to this very machine; the machine's own when left out. A profile of class
    /// defaults cannot be tied: there it is left aside.
    /// </summary>
    public BaselineWire? Baseline { get; init; }

    /// <summary>False: leave every measured run aside, the machine's own too; the answer is then relative.</summary>
    public bool? Anchor { get; init; }

    /// <summary>
    /// Altitude of the place where it runs; sea level when left out. From -500 m to 6000 m.
    /// </summary>
    public QuantityInputWire? Altitude { get; init; }

    /// <summary>
    /// Temperature of the air; the standard one of that altitude when left out. From -60 °C to 60 °C.
    /// </summary>
    public QuantityInputWire? Temperature { get; init; }

    /// <summary>
    /// Relative humidity of the air at that temperature; dry air when left out. From 0 % to 100 %.
    /// </summary>
    public QuantityInputWire? RelativeHumidity { get; init; }

    /// <summary>
    /// Airs in which the best set of each and the best single one for all are wanted besides: see season in the answer.
    /// Slots in keep stay the same in all of them; the others may change from air to air. The work limit holds for each.
    /// </summary>
    [MinLength(1)]
    [MaxLength(PickRequest.MaxConditions)]
    public IReadOnlyList<ConditionWire>? Conditions { get; init; }

    /// <summary>Which published law scales engine torque with the air; saeJ1349 when left out.</summary>
    [WordsOf(typeof(AirLaw))]
    public string? AirLaw { get; init; }

    /// <summary>Engine speed held on the brake before the start; engagement must lie above it.</summary>
    [Range(RequestLimits.MinRpm, RequestLimits.MaxRpm)]
    public double? LaunchRpm { get; init; }

    /// <summary>How far above the launch rpm engagement must lie; 100 when left out. Only beside launchRpm.</summary>
    [Range(RequestLimits.MinLaunchMarginRpm, RequestLimits.MaxLaunchMarginRpm)]
    public double? LaunchMarginRpm { get; init; }

    /// <summary>
    /// Least slip margin on the upshift curve; below 1 the belt slips. None is demanded when left out.
    /// </summary>
    [Range(RequestLimits.MinSlipMargin, RequestLimits.MaxSlipMargin)]
    public double? SlipMargin { get; init; }

    /// <summary>Slots whose fitted choice stays: driveSpring, flyweight, drivenSpring, hole, helix.</summary>
    [MaxLength(SlotCount)]
    [WordsOf(typeof(Slot))]
    public IReadOnlyList<string>? Keep { get; init; }

    /// <summary>
    /// Ids of parts that shall not be proposed, and of kits that shall not be bought; the parts of such a kit stay open.
    /// An id shuts out that number alone: to shut out the successor of a replaced number, name the successor. A belt and a
    /// part that keep holds are refused here.
    /// </summary>
    [MaxLength(RequestLimits.MaxExcluded)]
    public IReadOnlyList<string>? Exclude { get; init; }

    /// <summary>True: only what the outlet has in stock, alone or in a kit. False when left out.</summary>
    public bool? InStockOnly { get; init; }

    /// <summary>Most that the change may cost, in minor units of the outlet's currency; a set of unknown price is refused then.</summary>
    [Range(0, RequestLimits.MaxPriceMinor)]
    public long? PriceCeilingMinor { get; init; }

    /// <summary>True: every rule of fit must be checked by dimension; listed or unknown is not enough. False when left out.</summary>
    public bool? DemandChecked { get; init; }

    /// <summary>What decides the order: miss (when left out), or least work, which puts sets within tolerance first, by changes and price.</summary>
    [WordsOf(typeof(RankBy))]
    public string? RankBy { get; init; }

    /// <summary>True: at most one answer for each drive spring with flyweight body. False when left out.</summary>
    public bool? Group { get; init; }

    /// <summary>Id of the outlet whose prices and stock count; no prices are shown when left out.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public string? Outlet { get; init; }

    /// <summary>How many answers; 10 when left out.</summary>
    [Range(RequestLimits.MinCount, RequestLimits.MaxCount)]
    public int? Count { get; init; }

    /// <summary>At how many ratios the shift curve is compared; 9 when left out.</summary>
    [Range(RequestLimits.MinRatioPoints, RequestLimits.MaxRatioPoints)]
    public int? RatioPoints { get; init; }

    /// <summary>How many refusals to list; 500 when left out. The counts by rule are always whole.</summary>
    [Range(0, RequestLimits.MaxRefusals)]
    public int? Refusals { get; init; }

    /// <summary>
    /// How much the search may do: each box of sets that is bounded, each block of helices and each driven choice that is
    /// looked at, and each set that is judged counts one. When it is reached the answer has the best list so far,
    /// work.proven is false, and inTheWay says so where nothing is within tolerance. 20 million when left out.
    /// </summary>
    [Range(1, PickRequest.MaxWorkLimit)]
    public int? WorkLimit { get; init; }

    private const int SlotCount = 5;
}
