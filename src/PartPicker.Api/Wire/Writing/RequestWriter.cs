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
        Altitude = Metres(request.Air.AltitudeM),
        Temperature = Kelvins(request.Air.TemperatureK),
        AirLaw = WireJson.Word(request.AirLaw),
        LaunchRpm = request.LaunchRpm,
        LaunchMarginRpm = request.LaunchMarginRpm,
        SlipMargin = request.SlipMargin,
        Keep = [.. request.Keep.Order().Select(WireJson.Word)],
        Outlet = request.Outlet?.Id,
        Count = request.Count,
        RatioPoints = request.PointCount,
    };

    private static TargetsWire Targets(ShiftTarget target) => target.Shift is [var flat]
        ? new TargetsWire { EngagementRpm = target.EngagementRpm, ShiftRpm = flat.Rpm }
        : new TargetsWire { EngagementRpm = target.EngagementRpm, ShiftCurve = Curve(target.Shift) };

    private static BaselineWire Baseline(Baseline baseline) => new()
    {
        Parts = Set(baseline.Parts),
        EngagementRpm = baseline.EngagementRpm,
        ShiftRpm = baseline.FlatShiftRpm,
        ShiftCurve = baseline.FlatShiftRpm is null ? Curve(baseline.Shift) : null,
        Altitude = Metres(baseline.Air.AltitudeM),
        Temperature = Kelvins(baseline.Air.TemperatureK),
    };

    private static RatioRpmWire[] Curve(IReadOnlyList<RatioRpm> points) =>
        [.. points.Select(point => new RatioRpmWire { Ratio = point.Ratio, Rpm = point.Rpm })];

    private static SetWire Set(PartSet set) => new()
    {
        DriveSpring = set.DriveSpring,
        Flyweight = set.Flyweight,
        StationMasses = new StationMassesInputWire
        {
            Heel = Mass(set, StationName.Heel),
            Middle = Mass(set, StationName.Middle),
            Tip = Mass(set, StationName.Tip),
        },
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
}
