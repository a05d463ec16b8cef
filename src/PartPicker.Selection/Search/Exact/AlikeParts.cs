using System.Globalization;
using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Which choices the model cannot tell apart: equal numbers give equal balances to the last digit.</summary>
internal sealed class AlikeParts
{
    private readonly CandidatePools pools;
    private readonly int[] springs;
    private readonly int[] flyweights;
    private readonly int[] drivenSprings;
    private readonly int[] helices;

    public AlikeParts(CandidatePools pools)
    {
        this.pools = pools;
        springs = Kinds(pools.DriveSprings, s => $"{Number(s.ShimThickness)} {Text(SpringModels.Force(s.Spring)!)}");
        flyweights = Kinds(pools.Flyweights, Text);
        drivenSprings = Kinds(pools.Driven.Springs, s =>
            $"{Text(SpringModels.Axial(s)!)} {(SpringModels.Twist(s) is { } twist ? Text(twist) : "")} {s.LegOffsetDeg} {s.ActiveCoils}");
        helices = Kinds(pools.Driven.Helices, h => Text(h.Angles()));
    }

    public int OfSpring(int item) => springs[item];

    public int OfFlyweight(int item) => flyweights[item];

    public int OfDriven(int item)
    {
        // Holes of one twist are rare: each counts as its own kind.
        (int spring, int hole, int helix) = pools.Driven.Code(item);
        return (drivenSprings[spring] * pools.Driven.Holes.Count + hole) * pools.Driven.Helices.Count + helices[helix];
    }

    private static int[] Kinds<T>(IReadOnlyList<T> choices, Func<T, string> text)
    {
        Dictionary<string, int> kinds = new(StringComparer.Ordinal);
        return [.. choices.Select(text).Select(own => kinds.TryGetValue(own, out int kind) ? kind : kinds[own] = kinds.Count)];
    }

    private static string Text(LinearCurve curve)
    {
        double[] xs = [curve.From, .. curve.Knots, curve.To];
        return string.Join(' ', xs.Select(x => $"{Number(x)}:{Number(curve.At(x))}"));
    }

    private static string Text(FlyweightChoice choice)
    {
        IReadOnlyList<CurvePoint> path = choice.Body.AdjusterCurves?.First(c => c.Name == choice.AdjusterStep).Points
            ?? choice.Body.RadiusCurve;
        IEnumerable<string> stations = choice.Body.Stations().Select(s =>
            $"{s.Name} {Number(choice.Masses.GetValueOrDefault(s.Name))} {Text(s.RadiusCurve)}");
        return $"{Number(choice.Body.BodyMass.Kilograms)} {Text(path)} {string.Join(' ', stations)}";
    }

    private static string Text(IEnumerable<CurvePoint> points) =>
        string.Join(' ', points.Select(p => $"{Number(p.X)}:{Number(p.Y)}"));

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
