using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>The rpm that are wanted: of engagement, null where none is asked, and at each position.</summary>
internal sealed record WantedRpm(double? Engagement, double[] Shift);

/// <summary>Turns what a request wants into the rpm wanted at engagement and at each point.</summary>
internal static class ShiftGoals
{
    /// <summary>The wanted rpm, or null with a problem where a position has none or several.</summary>
    /// <param name="fitted">What changes are counted from.</param>
    public static WantedRpm? Of(ShiftTarget target, Predictor predictor, SetUp fitted, List<RequestProblem> problems)
    {
        double[]? shift = target.Shift is ShiftGoal.Change change
            ? Changed(change.Rpm, predictor.Predict(fitted), problems)
            : Targets(target.Shift, predictor.Machine, predictor.Model, problems);
        if (shift is null)
            return null;
        return new WantedRpm(
            target.EngagementChangeRpm is { } rpm
                ? predictor.Drive(fitted.Spring, fitted.Flyweight).Engagement.Rpm + rpm
                : target.EngagementRpm,
            shift);
    }

    private static double[]? Changed(double rpm, Prediction fitted, List<RequestProblem> problems)
    {
        if (fitted.Curve.FirstOrDefault(p => p.Upshift is null) is { } still)
        {
            problems.Add(new RequestProblem(
                "targets/shiftChangeRpm", RequestProblemCodes.TargetUnclear, null,
                $"a fitted set that shifts at every ratio, to count the change from; by the model this one does not at ratio "
                + $"{still.Ratio:0.00} below the rev limit. Check the fitted parts and their station masses, or bring a measured "
                + "run and ask for the rpm itself"));
            return null;
        }

        return [.. fitted.Curve.Select(p => p.Upshift!.Rpm + rpm)];
    }

    private static double[]? Targets(ShiftGoal goal, MachineModel machine, ShiftModel model, List<RequestProblem> problems)
    {
        double[] ratios = [.. model.Positions.Select(p => p.Ratio)];
        switch (goal)
        {
            case ShiftGoal.Flat flat:
                return [.. ratios.Select(_ => flat.Rpm)];
            case ShiftGoal.PeakPower:
                return [.. ratios.Select(_ => model.PeakPowerRpm)];
            case ShiftGoal.ByRatio byRatio:
                (double X, double Y)[] points = [.. byRatio.Points.Select(p => (p.Ratio, p.Rpm)).OrderBy(p => p.Ratio)];
                return [.. ratios.Select(ratio => Held(points, ratio))];
            case ShiftGoal.BySpeed bySpeed:
                return Meetings(bySpeed, machine, ratios, problems);
            default:
                throw new ArgumentOutOfRangeException(nameof(goal), goal, "No such goal.");
        }
    }

    /// <summary>Straight lines between points by rising x, held at the ends.</summary>
    private static double Held((double X, double Y)[] points, double x)
    {
        if (x <= points[0].X)
            return points[0].Y;
        for (int i = 1; i < points.Length; i++)
        {
            if (x <= points[i].X)
            {
                double t = (x - points[i - 1].X) / (points[i].X - points[i - 1].X);
                return points[i - 1].Y + t * (points[i].Y - points[i - 1].Y);
            }
        }

        return points[^1].Y;
    }

    private static double[]? Meetings(ShiftGoal.BySpeed goal, MachineModel machine, double[] ratios, List<RequestProblem> problems)
    {
        (double X, double Y)[] points = [.. goal.Points.Select(p => (p.SpeedMPerS, p.Rpm)).OrderBy(p => p.SpeedMPerS)];
        var targets = new double[ratios.Length];
        for (int j = 0; j < ratios.Length; j++)
        {
            // At a fixed ratio the vehicle speed is proportional to rpm: v = n · perRpm.
            double perRpm = Rotation.ToRadiansPerSecond(1) * machine.Drivetrain.TyreRadius
                / (ratios[j] * machine.Drivetrain.FinalDrive);
            double[] met = [.. Meet(points, perRpm)];
            if (met.Length != 1)
            {
                problems.Add(new RequestProblem(
                    "targets/speedCurve", RequestProblemCodes.TargetUnclear, null, $"a line that is met once at every ratio; at ratio {ratios[j]:0.00} this one is met {met.Length} times. Let rpm rise with speed no faster than the machine's own gearing, or give shiftCurve by ratio"));
                return null;
            }

            targets[j] = met[0];
        }

        return targets;
    }

    /// <summary>Every n with n = N(n · perRpm), N the held line; touching points counted once.</summary>
    private static IEnumerable<double> Meet((double X, double Y)[] points, double perRpm)
    {
        if (points[0].Y * perRpm <= points[0].X)
            yield return points[0].Y;
        for (int i = 1; i < points.Length; i++)
        {
            // On this piece N = y₀ + slope (v − x₀); with v = n perRpm the crossing is explicit.
            (double x0, double y0) = points[i - 1];
            (double x1, double y1) = points[i];
            double slope = (y1 - y0) / (x1 - x0);
            double n = (y0 - slope * x0) / (1 - slope * perRpm);
            double v = n * perRpm;
            if (double.IsFinite(n) && v > x0 && v <= x1)
                yield return n;
        }

        if (points[^1].Y * perRpm > points[^1].X)
            yield return points[^1].Y;
    }
}
