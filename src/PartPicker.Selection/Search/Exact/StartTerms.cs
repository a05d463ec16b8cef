using System.Runtime.Intrinsics;
using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>
/// Bounds on engagement: spring and flyweights each give a row of numbers, and of ω_e² (1 − f) a_f the greatest product
/// of a first row's terms is a floor, of a second row's a ceiling.
/// </summary>
/// <remarks>
/// ω_e² (1 − f) a_f is the greatest F₁(x)/W(x) before contact. Over a span of travel no ratio exceeds greatest F₁ over
/// least W, so the greatest of these over all spans is a ceiling. The model looks at both ends, and at least once in
/// every sixteenth of the way between, and so in each wider span: there the ratio is no less than least F₁ over greatest
/// W, so the greatest of these is a floor. A greatest is the same in whatever order it is looked for.
/// </remarks>
internal sealed class StartTerms
{
    private const int FloorSpans = 14;
    private const int CeilingSpans = 64;

    /// <summary>Terms of the floor: both ends, then each span. They fill whole vectors, as those of the ceiling do.</summary>
    public const int FloorCount = FloorSpans + 2;

    /// <summary>All terms, those of the floor first.</summary>
    public const int Count = FloorCount + CeilingSpans;

    // More than the rounding of a product of two floats.
    private const double Slack = 3e-7;

    // Stands for a ratio that nothing is known of; no machine comes near it.
    private const double Unbounded = 1e30;

    private readonly double contact;

    public StartTerms(double contactTravel) => contact = contactTravel;

    /// <summary>Forces (N): the least for the floor, the greatest for the ceiling.</summary>
    public void OfSpring(LinearCurve force, double length, Span<double> terms)
    {
        terms[0] = force.At(length);
        terms[1] = force.At(length - contact);
        for (int i = 0; i < FloorSpans; i++)
            terms[2 + i] = Range(force, length, i, FloorSpans).Least;
        for (int i = 0; i < CeilingSpans; i++)
            terms[FloorCount + i] = Range(force, length, i, CeilingSpans).Greatest;
    }

    /// <summary>1/W: of the greatest for the floor, of the least for the ceiling.</summary>
    public void OfFlyweights(FlyweightSet set, Span<double> terms)
    {
        terms[0] = 1 / set.ThrustPerSpeedSquared(0);
        terms[1] = 1 / set.ThrustPerSpeedSquared(contact);
        for (int i = 0; i < FloorSpans; i++)
            terms[2 + i] = 1 / set.ThrustRange(contact * i / FloorSpans, contact * (i + 1) / FloorSpans).Greatest;
        for (int i = 0; i < CeilingSpans; i++)
        {
            double least = set.ThrustRange(contact * i / CeilingSpans, contact * (i + 1) / CeilingSpans).Least;
            terms[FloorCount + i] = least > 0 ? Math.Min(1 / least, Unbounded) : Unbounded;
        }
    }

    /// <summary>The floor of ω_e² (1 − f) a_f from the least terms of both.</summary>
    public static double Floor(ReadOnlySpan<float> spring, ReadOnlySpan<float> flyweights) =>
        Greatest(spring[..FloorCount], flyweights[..FloorCount]) * (1 - Slack);

    /// <summary>The ceiling of ω_e² (1 − f) a_f from the greatest terms of both.</summary>
    public static double Ceiling(ReadOnlySpan<float> spring, ReadOnlySpan<float> flyweights) =>
        Greatest(spring[FloorCount..Count], flyweights[FloorCount..Count]) * (1 + Slack);

    private static double Greatest(ReadOnlySpan<float> spring, ReadOnlySpan<float> flyweights)
    {
        Vector512<float> most = Vector512<float>.Zero;
        for (int i = 0; i < spring.Length; i += Vector512<float>.Count)
            most = Vector512.Max(most, Vector512.Create(spring[i..]) * Vector512.Create(flyweights[i..]));
        Vector256<float> half = Vector256.Max(most.GetLower(), most.GetUpper());
        Vector128<float> quarter = Vector128.Max(half.GetLower(), half.GetUpper());
        return Math.Max(Math.Max(quarter[0], quarter[1]), Math.Max(quarter[2], quarter[3]));
    }

    private (double Least, double Greatest) Range(LinearCurve force, double length, int span, int spans)
    {
        double from = length - contact * (span + 1) / spans;
        double to = length - contact * span / spans;
        return Extremes.Of(force.At, force.Knots, from, to);
    }
}
