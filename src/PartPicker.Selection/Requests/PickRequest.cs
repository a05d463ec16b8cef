using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What is asked of <see cref="PartSelection"/>: one machine, a target, and what holds.</summary>
public sealed record PickRequest
{
    /// <summary>A machine of the catalog that is picked from.</summary>
    public required MachineProfile Machine { get; init; }

    public required ShiftTarget Target { get; init; }
    public Tolerances Tolerances { get; init; } = Tolerances.Standard;
    public ScoreWeights Weights { get; init; } = ScoreWeights.Standard;

    /// <summary>What is fitted now; the machine's own set when null.</summary>
    public PartSet? Fitted { get; init; }

    /// <summary>A measured run that the caller brings; the machine's first when null.</summary>
    public Baseline? Baseline { get; init; }

    /// <summary>The air to pick for; altitude up to the tropopause at 11 000 m.</summary>
    public AirState Air { get; init; }

    /// <summary>Which law scales torque with air, here and in the measured run.</summary>
    public AirLaw AirLaw { get; init; } = AirLaw.SaeJ1349;

    /// <summary>Engine speed (rpm) held on the brake before the start; engagement must lie above it. Null: none.</summary>
    public double? LaunchRpm { get; init; }

    /// <summary>How far (rpm) engagement must lie above the launch rpm; 0 or more.</summary>
    public double LaunchMarginRpm { get; init; } = StandardLaunchMarginRpm;

    /// <summary>Least slip margin at every ratio of the upshift curve; none is demanded when null.</summary>
    public double? SlipMargin { get; init; }

    /// <summary>Slots whose fitted choice stays.</summary>
    public IReadOnlySet<Slot> Keep { get; init; } = new HashSet<Slot>();

    /// <summary>Where prices and stock are read; none are shown when null.</summary>
    public Outlet? Outlet { get; init; }

    /// <summary>How many answers: 1 to <see cref="MaxCount"/>.</summary>
    public int Count { get; init; } = StandardCount;

    /// <summary>
    /// K: at how many ratios the curve is compared, <see cref="MinPointCount"/> to <see cref="MaxPointCount"/>.
    /// </summary>
    public int PointCount { get; init; } = StandardPointCount;

    public const int StandardCount = 10;
    public const int MaxCount = 50;
    public const int StandardPointCount = 9;
    public const int MinPointCount = 3;
    public const int MaxPointCount = 15;
    public const double StandardLaunchMarginRpm = 100;
}

/// <summary>The rpm that is wanted.</summary>
/// <param name="EngagementRpm">Where the belt shall take hold, above 0.</param>
/// <param name="Shift">
/// Points of rpm over ratio, by falling ratio: straight lines between, held at the ends. One point is a flat curve.
/// 1 to <see cref="MaxPoints"/> points, no ratio twice.
/// </param>
public sealed record ShiftTarget(double EngagementRpm, IReadOnlyList<RatioRpm> Shift)
{
    /// <summary>One speed to hold through the whole shift.</summary>
    public static ShiftTarget Flat(double engagementRpm, double shiftRpm) =>
        new(engagementRpm, [new RatioRpm(1, shiftRpm)]);

    public const int MaxPoints = 50;
}

/// <summary>By how many rpm an answer may miss and still count as a hit: <see cref="Min"/> to <see cref="Max"/>.</summary>
/// <param name="EngagementRpm">tol_e, on engagement.</param>
/// <param name="ShiftRpm">tol_s, at each ratio of the shift curve.</param>
public sealed record Tolerances(double EngagementRpm, double ShiftRpm)
{
    public static readonly Tolerances Standard = new(100, 100);
    public const double Min = 5;
    public const double Max = 2_000;
}

/// <summary>How engagement and shift curve share the score; neither is below 0, and they sum to 1.</summary>
/// <param name="Engagement">w_e.</param>
/// <param name="Shift">w_s, shared evenly by the ratios of the curve.</param>
public sealed record ScoreWeights(double Engagement, double Shift)
{
    public static readonly ScoreWeights Standard = new(0.3, 0.7);
}
