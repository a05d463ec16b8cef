using UnitsNet;

namespace PartPicker.Selection;

/// <summary>How a check came out.</summary>
internal enum FitVerdict
{
    Kept,
    Broken,
    NotChecked,
}

/// <summary>One check of one candidate: the value measured, the limit, and what follows.</summary>
/// <param name="Sentence">For a person: why it is broken, or what is missing; empty where it is kept.</param>
internal readonly record struct FitCheck(
    FitVerdict Verdict, Measure Measured, Measure Limit, double Margin, string Sentence)
{
    /// <summary>Kept, with nothing to measure: the rule is met by its nature or does not apply.</summary>
    public static readonly FitCheck Holds = new(FitVerdict.Kept, default, default, 0, "");

    /// <summary>Kept where measured is at least the limit, less the tolerance.</summary>
    public static FitCheck AtLeast(double measured, double limit, QuantityInfo? dimension, double tolerance, string broken) =>
        Compare(measured, limit, measured - limit, dimension, tolerance, broken);

    /// <summary>Kept where measured is at most the limit, with the tolerance.</summary>
    public static FitCheck AtMost(double measured, double limit, QuantityInfo? dimension, double tolerance, string broken) =>
        Compare(measured, limit, limit - measured, dimension, tolerance, broken);

    /// <summary>Kept where both are the same within the tolerance.</summary>
    public static FitCheck Same(double measured, double wanted, QuantityInfo? dimension, double tolerance, string broken) =>
        Compare(measured, wanted, -Math.Abs(measured - wanted), dimension, tolerance, broken);

    /// <summary>This check where it is broken, and else the other one: a span has two ends.</summary>
    public FitCheck And(FitCheck other) => Verdict == FitVerdict.Broken ? this : other;

    public static FitCheck NotChecked(string missing) => new(FitVerdict.NotChecked, default, default, 0, missing);

    private static FitCheck Compare(
        double measured, double limit, double margin, QuantityInfo? dimension, double tolerance, string broken)
    {
        bool kept = margin >= -tolerance;
        return new FitCheck(
            kept ? FitVerdict.Kept : FitVerdict.Broken,
            new Measure(measured, dimension),
            new Measure(limit, dimension),
            Math.Max(0, margin),
            kept ? "" : broken);
    }
}
