namespace PartPicker.Selection;

/// <summary>The pairs of drive spring and flyweights by themselves: which engage too low, and which nearest to the target.</summary>
internal sealed class DrivePairs(SearchIndex index, Condition condition, SetBounds bounds)
{
    /// <summary>Pairs that engage below a speed (rpm).</summary>
    public long CountBelow(double rpm, CancellationToken cancellation)
    {
        long below = 0;
        Visit((pair, least, greatest) =>
        {
            if (greatest < rpm)
                below += (long)index.Springs.Count(pair.Spring) * index.Flyweights.Count(pair.Flyweight);
            return least < rpm && greatest >= rpm;
        }, cancellation);
        return below;
    }

    /// <summary>The engagement nearest to the target, at or above a speed (rpm); the lower one of two as near. Null: none.</summary>
    public double? Nearest(double leastRpm, CancellationToken cancellation)
    {
        double? nearest = null;
        double distance = double.PositiveInfinity;
        Visit((_, least, greatest) =>
        {
            if (greatest < leastRpm)
                return false;
            if (least == greatest)
            {
                double error = Math.Abs(condition.Score.EngagementError(least));
                if (error < distance || (error == distance && least < nearest))
                    (nearest, distance) = (least, error);
                return false;
            }

            return Math.Max(condition.Score.EngagementError(least), -condition.Score.EngagementError(greatest)) <= distance;
        }, cancellation);
        return nearest;
    }

    // Goes into a box where the visitor says so; a pair by itself comes with its true engagement.
    private void Visit(Func<(int Spring, int Flyweight), double, double, bool> into, CancellationToken cancellation)
    {
        BoxTree springs = index.Springs;
        BoxTree flyweights = index.Flyweights;
        var stack = new Stack<(int Spring, int Flyweight)>([(0, 0)]);
        while (stack.TryPop(out (int Spring, int Flyweight) pair))
        {
            cancellation.ThrowIfCancellationRequested();
            (double least, double greatest) = bounds.Engagement(
                springs.Low(pair.Spring), springs.High(pair.Spring),
                flyweights.Low(pair.Flyweight), flyweights.High(pair.Flyweight));
            if (!into(pair, least, greatest))
                continue;
            bool springAlone = springs.IsLeaf(pair.Spring);
            bool flyweightAlone = flyweights.IsLeaf(pair.Flyweight);
            if (springAlone && flyweightAlone)
            {
                double rpm = index.EngagementOf(
                    condition.Predictor, springs.Items(pair.Spring)[0], flyweights.Items(pair.Flyweight)[0]).Rpm;
                into(pair, rpm, rpm);
            }
            else if (flyweightAlone || (!springAlone && springs.Count(pair.Spring) >= flyweights.Count(pair.Flyweight)))
            {
                stack.Push((springs.Child(pair.Spring), pair.Flyweight));
                stack.Push((springs.Child(pair.Spring) + 1, pair.Flyweight));
            }
            else
            {
                stack.Push((pair.Spring, flyweights.Child(pair.Flyweight)));
                stack.Push((pair.Spring, flyweights.Child(pair.Flyweight) + 1));
            }
        }
    }
}
