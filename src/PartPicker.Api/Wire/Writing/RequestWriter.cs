using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>Writes a request as understood: normalised, in SI, with every default filled in.</summary>
internal static class RequestWriter
{
    public static PickRequestWire Write(PickRequest request) => new()
    {
        Machine = request.Machine.Machine.Id,
        Targets = Targets(request.Target),
        Tolerances = new TolerancesWire
        {
            EngagementRpm = request.Tolerances.EngagementRpm,
            ShiftRpm = request.Tolerances.ShiftRpm,
        },
        Weights = new WeightsWire { Engagement = request.Weights.Engagement, Shift = request.Weights.Shift },
        Fitted = request.Fitted is { } fitted ? Set(fitted) : null,
        Baseline = request.Baseline is { } baseline ? Baseline(baseline) : null,
        Anchor = request.Anchor ? null : false,
        Altitude = Metres(request.Air.AltitudeM),
        Temperature = Kelvins(request.Air.TemperatureK),
        RelativeHumidity = Percent(request.Air.RelativeHumidity),
        Conditions = request.Conditions.Count == 0 ? null : [.. request.Conditions.Select(Condition)],
        AirLaw = WireJson.Word(request.AirLaw),
        LaunchRpm = request.LaunchRpm,
        LaunchMarginRpm = request.LaunchRpm is null ? null : request.LaunchMarginRpm,
        SlipMargin = request.SlipMargin,
        Keep = [.. request.Keep.Order().Select(WireJson.Word)],
        Exclude = [.. request.Exclude.Order(StringComparer.Ordinal)],
        InStockOnly = request.InStockOnly,
        PriceCeilingMinor = request.PriceCeilingMinor,
        DemandChecked = request.DemandChecked,
        RankBy = WireJson.Word(request.RankBy),
        Group = request.Group,
        Outlet = request.Outlet?.Id,
        Count = request.Count,
        RatioPoints = request.PointCount,
        Refusals = request.RefusalCount,
        WorkLimit = request.WorkLimit,
    };

    private static ConditionWire Condition(AirState air) => new()
    {
        Altitude = Metres(air.AltitudeM),
        Temperature = Kelvins(air.TemperatureK),
        RelativeHumidity = Percent(air.RelativeHumidity),
    };

    private static TargetsWire Targets(ShiftTarget target) => new()
    {
        EngagementRpm = target.EngagementRpm,
        ShiftRpm = target.Shift is ShiftGoal.Flat flat ? flat.Rpm : null,
        ShiftCurve = target.Shift is ShiftGoal.ByRatio byRatio ? Curve(byRatio.Points) : null,
        SpeedCurve = target.Shift is ShiftGoal.BySpeed bySpeed
            ? [.. bySpeed.Points.Select(p => new SpeedRpmWire
            {
                Speed = new QuantityInputWire { Value = p.SpeedMPerS, Unit = "m/s" }, Rpm = p.Rpm,
            })]
            : null,
        PeakPower = target.Shift is ShiftGoal.PeakPower ? true : null,
        EngagementChangeRpm = target.EngagementChangeRpm,
        ShiftChangeRpm = target.Shift is ShiftGoal.Change change ? change.Rpm : null,
    };

    private static BaselineWire Baseline(Baseline baseline) => new()
    {
        Parts = Set(baseline.Parts),
        EngagementRpm = baseline.EngagementRpm,
        ShiftRpm = baseline.FlatShiftRpm,
        ShiftCurve = baseline.FlatShiftRpm is null ? Curve(baseline.Shift) : null,
        SolveFriction = baseline.SolveFriction,
        Altitude = Metres(baseline.Air.AltitudeM),
        Temperature = Kelvins(baseline.Air.TemperatureK),
        RelativeHumidity = Percent(baseline.Air.RelativeHumidity),
    };

    public static RatioRpmWire[] Curve(IReadOnlyList<RatioRpm> points) =>
        [.. points.Select(point => new RatioRpmWire { Ratio = point.Ratio, Rpm = point.Rpm })];

    public static SetWire Set(PartSet set) => new()
    {
        DriveSpring = set.DriveSpring,
        Flyweight = set.Flyweight,
        StationMasses = new StationMassesInputWire
        {
            Pin = Mass(set, StationName.Pin),
            Heel = Mass(set, StationName.Heel),
            Middle = Mass(set, StationName.Middle),
            Tip = Mass(set, StationName.Tip),
        },
        AdjusterStep = set.AdjusterStep,
        // None are said to be none: left out, they would come from the set that this one changes.
        Shims = new ShimsWire { Shim = set.Shims?.ShimId, Count = set.Shims?.Count ?? 0 },
        DrivenSpring = set.DrivenSpring,
        Hole = set.Hole,
        Helix = set.Helix,
    };

    private static QuantityInputWire? Mass(PartSet set, StationName station) =>
        set.StationMasses.TryGetValue(station, out double mass) && mass != 0
            ? new QuantityInputWire { Value = SiDigits.Round(mass), Unit = "kg" }
            : null;

    private static QuantityInputWire Metres(double metres) => new() { Value = metres, Unit = "m" };

    private static QuantityInputWire? Kelvins(double? kelvins) =>
        kelvins is { } value ? new QuantityInputWire { Value = value, Unit = "K" } : null;

    private static QuantityInputWire? Percent(double? share) =>
        share is { } value ? new QuantityInputWire { Value = SiDigits.Round(value * 100), Unit = "%" } : null;
}
