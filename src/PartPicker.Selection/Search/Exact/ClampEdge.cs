namespace PartPicker.Selection;

/// <summary>The clamp at which something changes for good: it holds for every lesser one and for no greater one.</summary>
internal static class ClampEdge
{
    private const int MaxSteps = 200;
    private const double Accuracy = 1e-15;

    /// <summary>The edge between two neighbouring clamps (N), by doubling and halving.</summary>
    /// <param name="start">Any clamp above 0.</param>
    /// <param name="holds">True below the edge.</param>
    /// <returns>The greatest clamp that was seen to hold, 0 where none was, and the least one that was not.</returns>
    public static (double Below, double Above) Of(double start, Func<double, bool> holds)
    {
        double above = start;
        while (holds(above))
            above *= 2;
        double below = 0;
        for (int step = 0; step < MaxSteps && above - below > Accuracy * above; step++)
        {
            double middle = (above + below) / 2;
            if (holds(middle))
                below = middle;
            else
                above = middle;
        }

        return (below, above);
    }
}
