using System.Runtime.CompilerServices;
using PartPicker.Parts;
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
/// <param name="Margin">The room that is left; null where there is nothing to measure, or no room to speak of.</param>
/// <param name="Broken">Why it is broken, where it is.</param>
internal readonly record struct FitCheck(
    FitVerdict Verdict, Measure Measured, Measure Limit, double? Margin, string Broken)
{
    /// <summary>For a person: why it is broken, or what is missing; empty where it is kept.</summary>
    public string Sentence => Gap?.Invoke() ?? Broken;

    // A search makes millions of checks, and tells the same gap once.
    private Func<string>? Gap { get; init; }

    /// <summary>Where the machine's profile must say more, when what is missing is not the part's; empty otherwise.</summary>
    public string Remedy { get; private init; } = "";

    /// <summary>Kept, with nothing to measure: the rule is met by its nature or does not apply.</summary>
    public static readonly FitCheck Holds = new(FitVerdict.Kept, default, default, null, "");

    /// <summary>Kept or broken by a word, not by a number.</summary>
    public static FitCheck Word(bool kept, string broken) => kept ? Holds : new(FitVerdict.Broken, default, default, null, broken);

    /// <summary>Kept where measured is at least the limit, less the tolerance.</summary>
    public static FitCheck AtLeast(double measured, double limit, QuantityInfo? dimension, double tolerance, string broken) =>
        Compare(measured, limit, measured - limit, dimension, tolerance, broken, hasRoom: true);

    /// <summary>The same, the sentence put together only where it is told.</summary>
    public static FitCheck AtLeast(
        double measured, double limit, QuantityInfo? dimension, double tolerance,
        [InterpolatedStringHandlerArgument("measured", "limit", "tolerance")] ref WhyBroken broken) =>
        AtLeast(measured, limit, dimension, tolerance, broken.Sentence());

    /// <summary>Kept where measured is at most the limit, with the tolerance.</summary>
    public static FitCheck AtMost(double measured, double limit, QuantityInfo? dimension, double tolerance, string broken) =>
        Compare(measured, limit, limit - measured, dimension, tolerance, broken, hasRoom: true);

    /// <summary>The same, the sentence put together only where it is told.</summary>
    public static FitCheck AtMost(
        double measured, double limit, QuantityInfo? dimension, double tolerance,
        [InterpolatedStringHandlerArgument("limit", "measured", "tolerance")] ref WhyBroken broken) =>
        AtMost(measured, limit, dimension, tolerance, broken.Sentence());

    /// <summary>Kept where both are the same within the tolerance: there is no room between them, so no margin.</summary>
    public static FitCheck Same(double measured, double wanted, QuantityInfo? dimension, double tolerance, string broken) =>
        Compare(measured, wanted, -Math.Abs(measured - wanted), dimension, tolerance, broken, hasRoom: false);

    /// <summary>This check where it is broken, and else the other one: a span has two ends.</summary>
    public FitCheck And(FitCheck other) => Verdict == FitVerdict.Broken ? this : other;

    public static FitCheck NotChecked(string missing) => NotChecked(() => missing);

    /// <summary>Not checked; what is missing is put together only where it is told.</summary>
    public static FitCheck NotChecked(Func<string> missing) => new(FitVerdict.NotChecked, default, default, null, "") { Gap = missing };

    /// <summary>Not checked for want of those that are not known.</summary>
    public static FitCheck NotChecked(params IEnumerable<(string What, bool Known)> needed) => NotChecked(() => Words.Lacking(needed));

    /// <summary>Not checked, since a piece of the machine does not state a field.</summary>
    public static FitCheck NotStated(CatalogItem piece, string field, string what) => NotChecked(what) with
    {
        Remedy = $"fill in {field} of the {Words.Of(piece.Kind)} {piece.Id} in the catalog",
    };

    private static FitCheck Compare(
        double measured, double limit, double margin, QuantityInfo? dimension, double tolerance, string broken,
        bool hasRoom)
    {
        bool kept = Keeps(margin, tolerance);
        return new FitCheck(
            kept ? FitVerdict.Kept : FitVerdict.Broken,
            new Measure(measured, dimension),
            new Measure(limit, dimension),
            hasRoom ? Math.Max(0, margin) : null,
            kept ? "" : broken);
    }

    private static bool Keeps(double margin, double tolerance) => margin >= -tolerance;

    /// <summary>The sentence of a check of two numbers: a search makes millions of checks, and few are broken.</summary>
    [InterpolatedStringHandler]
    internal ref struct WhyBroken
    {
        private readonly bool told;
        private DefaultInterpolatedStringHandler sentence;

        public WhyBroken(int literalLength, int formattedCount, double greater, double less, double tolerance, out bool told)
        {
            told = this.told = !Keeps(greater - less, tolerance);
            sentence = told ? new DefaultInterpolatedStringHandler(literalLength, formattedCount) : default;
        }

        public void AppendLiteral(string value) => sentence.AppendLiteral(value);

        public void AppendFormatted<T>(T value) => sentence.AppendFormatted(value);

        public void AppendFormatted<T>(T value, string? format) => sentence.AppendFormatted(value, format);

        public string Sentence() => told ? sentence.ToStringAndClear() : "";
    }
}
