namespace PartPicker.Selection;

/// <summary>What a look at a pair gave.</summary>
internal enum Sight
{
    /// <summary>Clamps are wanted: choices can be told apart.</summary>
    Clear,

    /// <summary>At too many positions nothing can be told.</summary>
    Unclear,

    /// <summary>No choice makes a set that counts.</summary>
    Nothing,
}

/// <summary>What a drive pair asks of the driven side, as far as a radius reaches.</summary>
internal sealed class PairView(SearchIndex index, double[] targetTorque, (double[] Low, double[] High) frames)
{
    private const double Slack = 1e-9;
    private readonly int points = targetTorque.Length;
    private readonly double[] wantedShares = new double[targetTorque.Length];
    private double least;
    private double apart;

    public Sight Sight { get; set; }

    /// <summary>The miss up to which this holds.</summary>
    public double Radius { get; set; }

    /// <summary>At each position the least clamp (N) that the target may need.</summary>
    public double[] WantedLow { get; } = new double[targetTorque.Length];

    /// <summary>And the greatest.</summary>
    public double[] WantedHigh { get; } = new double[targetTorque.Length];

    /// <summary>Error, in tolerances, per newton of clamp away from these at least; 0 where nothing can be told.</summary>
    public double[] PerNewton { get; } = new double[targetTorque.Length];

    /// <summary>For each helix whether a choice may stay within its limit of Σe_j², whatever its spring and hole.</summary>
    public void MayHold(ReadOnlySpan<double> limits, Span<bool> held)
    {
        if (!(least > 0))
        {
            held.Fill(true);
            return;
        }

        Span<double> shares = stackalloc double[limits.Length];
        Span<double> squares = stackalloc double[limits.Length];
        for (int g = 0; g < shares.Length; g++)
            shares[g] = limits[g] / (least * least);
        index.Frames.Squares(frames, wantedShares, apart, shares, squares);
        for (int g = 0; g < held.Length; g++)
            held[g] = squares[g] <= shares[g];
    }

    /// <summary>Makes ready for groups, when all else is known.</summary>
    public void Close()
    {
        least = double.PositiveInfinity;
        apart = 0;
        for (int j = 0; j < points; j++)
        {
            double usual = index.UsualClamp[j];
            least = Math.Min(least, PerNewton[j] * usual);
            wantedShares[j] = (WantedLow[j] + WantedHigh[j]) / 2 / usual;
            double loose = (WantedHigh[j] - WantedLow[j]) / 2 / usual;
            apart += loose * loose;
        }

        apart = Math.Sqrt(apart) * (1 + Slack);
    }

    /// <summary>Σe_j² that no member of a node falls below; more than the limit where it is exceeded.</summary>
    public double SquaresOf(int drivenNode, double limit)
    {
        ReadOnlySpan<float> low = index.Driven.Low(drivenNode);
        ReadOnlySpan<float> high = index.Driven.High(drivenNode);
        double squares = 0;
        for (int j = 0; j < low.Length / 2; j++)
        {
            double torque = targetTorque[j];
            double least = low[j] + low[points + j] * torque;
            double most = high[j] + high[points + j] * torque;
            double error = Math.Max(0, Math.Max(least - WantedHigh[j], WantedLow[j] - most)) * PerNewton[j];
            squares += error * error;
            if (squares > limit)
                return squares;
        }

        return squares;
    }

    /// <summary>The same of one choice.</summary>
    public double SquaresOfItem(int item, double limit, out double greatest)
    {
        Span<double> standing = stackalloc double[points];
        index.Clamps.Standing(item, standing);
        ReadOnlySpan<double> perTorque = index.Clamps.PerTorque(item);
        double squares = 0;
        greatest = 0;
        for (int j = 0; j < standing.Length; j++)
        {
            double clamp = standing[j] + perTorque[j] * targetTorque[j];
            double apart = Math.Max(clamp * (1 - Slack) - WantedHigh[j], WantedLow[j] - clamp * (1 + Slack));
            double error = Math.Max(0, apart) * PerNewton[j];
            squares += error * error;
            greatest = Math.Max(greatest, error);
            if (squares > limit)
                return squares;
        }

        return squares;
    }
}
