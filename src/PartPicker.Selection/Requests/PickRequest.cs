using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What is asked of <see cref="PartSelection"/>: one machine, a target, and what holds.</summary>
public sealed record PickRequest
{
    public required MachineProfile Machine { get; init; }
    public required ShiftTarget Target { get; init; }
    public Tolerances Tolerances { get; init; } = Tolerances.Standard;
    public ScoreWeights Weights { get; init; } = ScoreWeights.Standard;

    /// <summary>What is fitted now; the machine's own set when null.</summary>
    public PartSet? Fitted { get; init; }

    /// <summary>A measured run that the caller brings; the machine's first when null.</summary>
    public Baseline? Baseline { get; init; }

    /// <summary>False: leave every baseline aside; the answer is then relative to what is fitted.</summary>
    public bool Anchor { get; init; } = true;

    public AirState Air { get; init; }
    public AirLaw AirLaw { get; init; } = AirLaw.SaeJ1349;

    /// <summary>Airs in which the best set of each and the best single one of all are wanted besides.</summary>
    public IReadOnlyList<AirState> Conditions { get; init; } = [];

    /// <summary>Engine speed held on the brake before the start; engagement must lie above it.</summary>
    public double? LaunchRpm { get; init; }

    /// <summary>How far engagement must lie above the launch rpm.</summary>
    public double LaunchMarginRpm { get; init; } = StandardLaunchMarginRpm;

    /// <summary>Least slip margin on the upshift curve; none is demanded when null.</summary>
    public double? SlipMargin { get; init; }

    /// <summary>Slots whose fitted choice stays.</summary>
    public IReadOnlySet<Slot> Keep { get; init; } = new HashSet<Slot>();

    /// <summary>Ids of parts that shall not be proposed, and of kits that shall not be bought; each shuts out that number alone.</summary>
    public IReadOnlySet<string> Exclude { get; init; } = new HashSet<string>();

    /// <summary>True: only parts that the outlet has in stock, in the packs needed.</summary>
    public bool InStockOnly { get; init; }

    /// <summary>Most that the change may cost, in minor units of the outlet's currency; a set of unknown price is refused then.</summary>
    public long? PriceCeilingMinor { get; init; }

    /// <summary>True: every rule of fit must be checked by dimension; listed or unknown is not enough.</summary>
    public bool DemandChecked { get; init; }

    public RankBy RankBy { get; init; } = RankBy.Miss;

    /// <summary>True: at most one answer for each drive spring with flyweight body, so that ten answers are ten choices.</summary>
    public bool Group { get; init; }

    /// <summary>Where prices and stock are read; none are shown when null.</summary>
    public Outlet? Outlet { get; init; }

    /// <summary>How many answers.</summary>
    public int Count { get; init; } = StandardCount;

    /// <summary>K: at how many ratios the curve is compared.</summary>
    public int PointCount { get; init; } = StandardPointCount;

    /// <summary>
    /// How much the search may do, in boxes bounded and sets judged; then it ends with the best list so far.
    /// </summary>
    public int WorkLimit { get; init; } = StandardWorkLimit;

    /// <summary>How many refusals are listed; the counts by rule are always whole.</summary>
    public int RefusalCount { get; init; } = MaxRefusalCount;

    public const int MaxConditions = 12;
    public const int StandardWorkLimit = 20_000_000;
    public const int MaxWorkLimit = 1_000_000_000;
    public const int MaxRefusalCount = 500;
    public const int StandardCount = 10;
    public const int MaxCount = 50;
    public const int StandardPointCount = 9;
    public const int MinPointCount = 3;
    public const int MaxPointCount = 15;
    public const double StandardLaunchMarginRpm = 100;
}

/// <summary>What decides the order.</summary>
public enum RankBy
{
    /// <summary>Rounded miss, then changes, then price.</summary>
    Miss,

    /// <summary>Sets within tolerance first, by changes, then price, then rounded miss.</summary>
    LeastWork,
}

/// <summary>The rpm that is wanted.</summary>
/// <param name="EngagementRpm">Where the belt shall take hold; null where a change is asked or another device starts the machine.</param>
/// <param name="Shift">What the engine shall hold while it shifts.</param>
public sealed record ShiftTarget(double? EngagementRpm, ShiftGoal Shift)
{
    /// <summary>By how much engagement shall change from that of the fitted set; null where its rpm is asked, or nothing.</summary>
    public double? EngagementChangeRpm { get; init; }

    /// <summary>True where nothing but changes against the fitted set is asked.</summary>
    public bool IsChange => EngagementRpm is null && Shift is ShiftGoal.Change;

    /// <summary>Widest change that one request may ask, up or down.</summary>
    public const double MaxChangeRpm = 5_000;

    public static ShiftTarget Flat(double? engagementRpm, double shiftRpm) => new(engagementRpm, new ShiftGoal.Flat(shiftRpm));

    public const int MaxPoints = 50;
}

/// <summary>A target shift curve.</summary>
public abstract record ShiftGoal
{
    private ShiftGoal()
    {
    }

    /// <summary>One rpm at every ratio.</summary>
    public sealed record Flat(double Rpm) : ShiftGoal;

    /// <summary>Points of rpm over ratio: straight lines between, held at the ends.</summary>
    public sealed record ByRatio(IReadOnlyList<RatioRpm> Points) : ShiftGoal;

    /// <summary>
    /// Points of rpm over vehicle speed (m/s): the target at a ratio is the rpm that meets the line at the speed it
    /// gives there. Refused where it meets none or several.
    /// </summary>
    public sealed record BySpeed(IReadOnlyList<SpeedRpm> Points) : ShiftGoal;

    /// <summary>The rpm of the engine's greatest power, in this air.</summary>
    public sealed record PeakPower : ShiftGoal;

    /// <summary>The curve of the fitted set, moved by this many rpm at every ratio.</summary>
    public sealed record Change(double Rpm) : ShiftGoal;
}

/// <summary>An engine speed at a vehicle speed (m/s).</summary>
public readonly record struct SpeedRpm(double SpeedMPerS, double Rpm);

/// <summary>By how many rpm an answer may miss and still count as a hit.</summary>
public sealed record Tolerances(double EngagementRpm, double ShiftRpm)
{
    public static readonly Tolerances Standard = new(100, 100);
    public const double Min = 5;
    public const double Max = 2_000;
}

/// <summary>How engagement and shift curve share the score; they sum to 1.</summary>
public sealed record ScoreWeights(double Engagement, double Shift)
{
    public static readonly ScoreWeights Standard = new(0.3, 0.7);
}
