using PartPicker.Mechanics;
using PartPicker.Selection;

namespace PartPicker.TestKit;

/// <summary>The wanted rpm at engagement and at each point, found the slow way.</summary>
internal static class PlainTargets
{
    /// <summary>Wanted engagement; null where none is asked.</summary>
    public static double? Engagement(PickRequest request, Predictor predictor, SetUp fitted) =>
        request.Target.EngagementRpm
        ?? predictor.Predict(fitted).EngagementRpm + request.Target.EngagementChangeRpm;

    public static double[] Of(PickRequest request, Predictor predictor, SetUp fitted) =>
    [
        .. predictor.Model.Positions.Select((p, j) => request.Target.Shift switch
        {
            ShiftGoal.Flat flat => flat.Rpm,
            ShiftGoal.Change change => change.Rpm + predictor.Model.BalanceRpm(
                predictor.Drive(fitted.Spring, fitted.Flyweight), predictor.Driven(fitted.Driven), j, ShiftDirection.Upshift)!.Value,
            ShiftGoal.PeakPower => predictor.Model.PeakPowerRpm,
            ShiftGoal.ByRatio goal => Held([.. goal.Points.Select(q => (q.Ratio, q.Rpm))], p.Ratio),
            ShiftGoal.BySpeed goal => Meeting(
                [.. goal.Points.Select(q => (q.SpeedMPerS, q.Rpm))],
                Math.PI / 30 * request.Machine.Gearing.TyreRadius.Meters / (p.Ratio * request.Machine.Gearing.FinalDrive)),
            _ => throw new ArgumentException("No such goal."),
        }),
    ];

    private static double Held((double X, double Y)[] line, double x)
    {
        (double X, double Y)[] points = [.. line.OrderBy(p => p.X)];
        if (x <= points[0].X)
            return points[0].Y;
        if (x >= points[^1].X)
            return points[^1].Y;
        int i = Array.FindIndex(points, p => p.X >= x);
        double t = (x - points[i - 1].X) / (points[i].X - points[i - 1].X);
        return points[i - 1].Y + t * (points[i].Y - points[i - 1].Y);
    }

    // The line is met where n − N(n · perRpm) changes sign: bisection over all speeds an engine can have.
    private static double Meeting((double X, double Y)[] line, double perRpm)
    {
        double low = 0;
        double high = 100_000;
        while (high - low > 1e-9)
        {
            double middle = (low + high) / 2;
            if (middle < Held(line, middle * perRpm))
                low = middle;
            else
                high = middle;
        }

        return (low + high) / 2;
    }
}
