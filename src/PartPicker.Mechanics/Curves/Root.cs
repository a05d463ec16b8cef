using MathNet.Numerics.RootFinding;

namespace PartPicker.Mechanics;

/// <summary>The zero of a function between two places where its signs differ.</summary>
internal static class Root
{
    private const double Accuracy = 1e-9;
    private const int MaxSteps = 200;

    /// <summary>What <see cref="OfScaled"/> takes is so many times the function.</summary>
    /// <remarks>
    /// The library stops as soon as |f| or the bracket is under its accuracy. In millionths of its unit |f| never is
    /// before the bracket, so a shallow slope costs no digits.
    /// </remarks>
    public const double Scale = 1e6;

    /// <summary>Brent's method until the bracket is narrower than 1e-9.</summary>
    /// <exception cref="InvalidOperationException">The signs at the ends do not differ.</exception>
    public static double Between(Func<double, double> f, double from, double to) => OfScaled(x => f(x) * Scale, from, to);

    /// <summary>Likewise, of a function that is scaled already.</summary>
    /// <exception cref="InvalidOperationException">The signs at the ends do not differ.</exception>
    public static double OfScaled(Func<double, double> f, double from, double to) =>
        Brent.TryFindRoot(f, from, to, Accuracy, MaxSteps, out double root)
            ? root
            : throw new InvalidOperationException($"No zero found between {from} and {to}.");
}
