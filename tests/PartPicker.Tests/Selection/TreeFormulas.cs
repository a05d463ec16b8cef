using PartPicker.Selection;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>Every relation of the model written anew from its page, by name: what a node must be of its parts, in their order.</summary>
/// <remarks>An equation that is solved for its value is tried with that value; a table is read by the lines or the cubic of its points.</remarks>
internal static class TreeFormulas
{
    private const double Share = 1e-9;

    // Moduli in GPa by wire up to 0.032, 0.063, 0.125 in and beyond, and those of the wires that have one. [SHI] Table 10-5.
    private static readonly double[][] Shear = [[82.7, 81.7, 81.0, 80.0], [80.7, 80.0, 79.3, 78.6], [77.2], [69.0]];
    private static readonly double[][] Elastic = [[203.4, 200, 196.5, 193], [198.6, 197.9, 197.2, 196.5], [196.5], [203.4], [193]];

    /// <summary>Asserts that a node follows from its parts.</summary>
    public static void Check(ExplainedValue node)
    {
        if (node.Parts.Count == 0)
            return;
        Assert.NotNull(node.Relation);
        double[] p = [.. node.Parts.Select(part => part.Value)];
        if (Solved.TryGetValue(node.Relation.Name, out Func<double, double[], (double Left, double Right)>? sides))
        {
            // The value is found within its bracket, and the sides only as near as that.
            (double left, double right) = sides(node.Value, p);
            Assert.True(
                Math.Abs(left - right) <= 1e-6 * (Math.Abs(left) + Math.Abs(right)),
                $"{node.Name}: {node.Relation.Equation} has {left:R} on the left and {right:R} on the right.");
            return;
        }

        double expected = Computed[node.Relation.Name](p);
        Assert.True(
            Math.Abs(expected - node.Value) <= Share * Math.Max(1, Math.Abs(expected)),
            $"{node.Name}: {node.Relation.Equation} gives {expected:R}, the tree says {node.Value:R}.");
    }

    /// <summary>The relations that are written here.</summary>
    public static IEnumerable<string> Names => Computed.Keys.Concat(Solved.Keys);

    private static readonly Dictionary<string, Func<double[], double>> Computed = new()
    {
        ["shim-stack"] = p => p[0] * p[1],
        ["drive-spring-length"] = p => p[0] - p[1] - p[2],
        ["spring-force"] = p => p[1] * Math.Max(0, p[2] - p[0]),
        ["spring-between-loads"] = p => Math.Max(0, p[2] + (p[4] - p[2]) * (p[0] - p[1]) / (p[3] - p[1])),
        ["rate-of-one-load"] = p => p[0] / (p[1] - p[2]),
        ["spring-rate"] = p => p[0] * Math.Pow(p[1], 4) / (8 * Math.Pow(p[2], 3) * p[3]),
        ["twist-rate"] = p => p[0] * Math.Pow(p[1], 4) / (64 * p[2] * p[3]),
        ["mean-diameter"] = p => p[0] - p[1],
        ["thrust-per-speed-squared"] = p => p[0] * Enumerable.Range(0, (p.Length - 1) / 3).Sum(m => p[3 * m + 1] * p[3 * m + 2] * p[3 * m + 3]),
        ["flyweight-thrust"] = p => p[0] * Math.Pow(Radians(p[1]), 2) * p[2],
        ["radius-curve"] = p => Cubic(p[0], Points(p, 1)).Value,
        ["radius-slope"] = p => Cubic(p[0], Points(p, 1)).Slope,
        ["engagement"] = p => Math.Sqrt(p[0] / ((1 - p[1]) * p[2] * p[3])) * 30 / Math.PI,
        ["grip-thrust"] = p => p[0] / (2 * p[1] * Math.Tan(p[2])),
        ["evenly-by-ratio"] = p => p[0] + (p[2] - 1) * (p[1] - p[0]) / (p[3] - 1),
        ["drive-radius"] = p => p[0] + (p[1] - p[2]) / (2 * Math.Tan(p[3])),
        ["drive-wrap"] = p => Math.PI - 2 * Math.Asin((p[1] - p[0]) / p[2]),
        ["driven-wrap"] = p => Math.PI + 2 * Math.Asin((p[1] - p[0]) / p[2]),
        ["opening-travel"] = p => (p[0] - p[1]) * 2 * Math.Tan(p[2]),
        ["ratio"] = p => p[0] / p[1],
        ["driven-clamp"] = p => p[0] + (p[1] + p[2] * p[3] * p[4] * p[5]) / (p[6] * Math.Tan(p[7] - p[8])),
        ["driven-spring-length"] = p => p[0] - p[1],
        ["stiffened-force"] = p => Math.Pow(1 + p[0] / (2 * Math.PI * p[1]), 2) * p[2],
        ["twist-torque"] = p => p[1] * Math.Max(0, p[0]),
        ["torque-between-twists"] = p => p[2] + (p[4] - p[2]) * (Math.Max(0, p[0]) - p[1]) / (p[3] - p[1]),
        ["twist"] = p => p[0] + p[1],
        ["preload-twist"] = p => p[0] + p[1],
        ["helix-angle"] = p => Lines(p[0], Points(p, 1)),
        ["cam-turn"] = p => Turn(p[0], p[1], Points(p, 2)),
        ["effective-tension"] = p => p[0] / p[1],
        ["groove-friction"] = p => p[0] / Math.Sin(p[1]),
        ["friction-by-radius"] = p => Lines(p[0], Points(p, 1)),
        ["slipping-tension"] = p => p[0] / (Math.Exp(p[1] * p[2]) - 1),
        ["tight-tension"] = p => p[0] + p[1],
        ["active-arc"] = p => Math.Log(p[0] / p[1]) / p[2],
        ["drive-thrust"] = p => (p[0] * Math.Max(0, p[1] - p[2]) + p[3] / p[4]) / (2 * Math.Tan(p[5])),
        ["locked-thrust"] = p => p[0] * p[1] / (2 * Math.Tan(p[2])),
        ["slip-margin"] = p => Math.Min(p[0] / p[1], p[2] / p[3]),
        ["slipping-margin"] = p => 2 * Math.Tan(p[7]) * Math.Max(0, p[4]) * p[6] / p[5] * Math.Min(p[0] / p[1], p[2] / p[3]),
        ["engine-torque"] = p => p[0] * p[1],
        ["torque-curve"] = p => Cubic(Math.Max(p[0], p[1]), Points(p, 1)).Value,
        ["two-peaks"] = p => TwoPeaks(p[0], p[1], p[2], p[3], p[4] / Radians(p[3])),
        ["torque-factor"] = p => p[0] / p[1],
        ["boosted-torque-factor"] = p => p[0] <= p[1] ? 1 : Math.Min(1, p[2] / p[3]),
        ["correction-sae-j1349"] = p => 1.180 * (99 / p[0]) * Math.Sqrt(p[1] / 298) - 0.18,
        ["correction-iso-1585"] = p => Math.Pow(99 / p[0], 1.2) * Math.Pow(p[1] / 298, 0.6),
        ["standard-pressure"] = p => 101.325 * Math.Pow(1 - 0.0065 * p[0] / 288.15, 9.80665 / (287.05287 * 0.0065)),
        ["standard-temperature"] = p => 288.15 - 0.0065 * p[0],
        ["same-day-temperature"] = p => p[0] + p[1] - p[2],
        ["dry-pressure"] = p => p[0] - p[1] * p[2],
        ["saturation-pressure"] = p => Math.Pow(p[0], 2.433502) / 1000
            * Math.Exp(21.2409642 - 6096.9385 / p[0] - 0.02711193 * p[0] + 1.673952e-5 * p[0] * p[0]),
        ["power"] = p => p[0] * Radians(p[1]),
        ["peak-power"] = p => p[0] * p[1] * Radians(p[2]),
        ["power-lost"] = p => p[0] - p[1],
        ["vehicle-speed"] = p => Radians(p[0]) * p[1] / (p[2] * p[3]),
        ["flyweight-factor"] = p => Math.Pow(p[0] / p[1], 2),
        ["thrust-left"] = p => (1 - p[0]) * p[1] - p[2],
        ["anchored-thrust"] = p => p[0] * p[1],
        ["thrust-factor"] = p => Points(p, 0).Sum(r => r.X * r.Y) / Points(p, 0).Sum(r => r.Y * r.Y),
    };

    private static readonly Dictionary<string, Func<double, double[], (double Left, double Right)>> Solved = new()
    {
        ["balance"] = (_, p) => ((1 - p[0]) * p[1], p[2] + p[3]),
        ["shifts-at-engagement"] = (_, p) => (Math.Min(0, (1 - p[0]) * p[1] - p[2] - p[3]), 0),
        ["lock-up"] = (_, p) => ((1 - p[0]) * p[1], p[2] + p[3] * p[4]),
        ["travel-at-ratio"] = (x, p) =>
        {
            double r1 = p[3] + (x - p[4]) / (2 * Math.Tan(p[5]));
            return (p[1], OpenBelt(p[2], r1, p[0] * r1));
        },
        ["shear-modulus"] = (modulus, p) => (modulus, Nearest(modulus, p[0], Shear)),
        ["elastic-modulus"] = (modulus, p) => (modulus, Nearest(modulus, p[0], Elastic)),
        ["open-belt-length"] = (r2, p) => (p[0], OpenBelt(p[1], p[2], r2)),
        ["belt-tension"] = (slack, p) => (
            2 * Math.Tan(p[4]) * Math.Max(0, p[0]), slack * (p[3] - Math.Log(1 + p[1] / slack) / p[2]) + p[1] / p[2]),
    };

    private static double Radians(double rpm) => rpm * Math.PI / 30;

    private static (double X, double Y)[] Points(double[] parts, int from) =>
        [.. parts[from..].Chunk(2).Select(pair => (pair[0], pair[1]))];

    private static double OpenBelt(double centres, double r1, double r2)
    {
        double straight = Math.Sqrt(centres * centres - (r2 - r1) * (r2 - r1));
        double slant = Math.Atan2(r2 - r1, straight);
        return 2 * straight + r1 * (Math.PI - 2 * slant) + r2 * (Math.PI + 2 * slant);
    }

    // Straight lines, level beyond the ends.
    private static double Lines(double x, (double X, double Y)[] points)
    {
        if (x <= points[0].X)
            return points[0].Y;
        foreach (((double X, double Y) a, (double X, double Y) b) in points.Zip(points.Skip(1)))
        {
            if (x <= b.X)
                return a.Y + (b.Y - a.Y) * (x - a.X) / (b.X - a.X);
        }

        return points[^1].Y;
    }

    // Simpson's rule over each straight piece.
    private static double Turn(double opening, double radius, (double X, double Y)[] points)
    {
        double[] cuts = [0, .. points.Select(p => p.X).Where(x => x > 0 && x < opening), opening];
        double turn = 0;
        const int steps = 200;
        foreach ((double from, double to) in cuts.Zip(cuts.Skip(1)))
        {
            double h = (to - from) / steps;
            for (int i = 0; i <= steps; i++)
            {
                int weight = i is 0 or steps ? 1 : i % 2 == 1 ? 4 : 2;
                turn += weight * h / 3 / (radius * Math.Tan(Lines(from + i * h, points)));
            }
        }

        return turn;
    }

    private static double TwoPeaks(double n, double torqueRpm, double most, double powerRpm, double atPower)
    {
        if (n <= torqueRpm)
            return most - most / 2 * Math.Pow((torqueRpm - n) / torqueRpm, 2);
        if (n >= powerRpm)
            return 2 * atPower - atPower * n / powerRpm;
        double p = Math.Max(1, (powerRpm - torqueRpm) * atPower / (powerRpm * (most - atPower)));
        return most - (most - atPower) * Math.Pow((n - torqueRpm) / (powerRpm - torqueRpm), p);
    }

    // The monotone cubic of Fritsch and Butland through two to four points, of which the middle piece holds x; or the
    // first or the last, where the curve ends with it. [FRI]
    private static (double Value, double Slope) Cubic(double x, (double X, double Y)[] points)
    {
        int i = 1;
        while (i < points.Length - 1 && points[i].X < x)
            i++;
        (double x0, double y0) = points[i - 1];
        (double x1, double y1) = points[i];
        double h = x1 - x0;
        double chord = (y1 - y0) / h;
        (double d0, double d1) = points.Length == 2 ? (chord, chord) : (SlopeAt(i - 1), SlopeAt(i));
        double t = (x - x0) / h;
        double bend = (3 * chord - 2 * d0 - d1) * t * t + (d0 + d1 - 2 * chord) * t * t * t;
        return (
            y0 + h * (d0 * t + bend),
            d0 + 2 * (3 * chord - 2 * d0 - d1) * t + 3 * (d0 + d1 - 2 * chord) * t * t);

        double SlopeAt(int k)
        {
            if (k == 0)
                return End(points[0], points[1], points[2]);
            if (k == points.Length - 1)
                return End(points[k], points[k - 1], points[k - 2]);
            double before = (points[k].Y - points[k - 1].Y) / (points[k].X - points[k - 1].X);
            double after = (points[k + 1].Y - points[k].Y) / (points[k + 1].X - points[k].X);
            if (before * after <= 0)
                return 0;
            double h0 = points[k].X - points[k - 1].X;
            double h1 = points[k + 1].X - points[k].X;
            return (3 * h0 + 3 * h1) / ((2 * h1 + h0) / before + (h1 + 2 * h0) / after);
        }

        static double End((double X, double Y) end, (double X, double Y) next, (double X, double Y) third)
        {
            double h0 = next.X - end.X;
            double h1 = third.X - next.X;
            double near = (next.Y - end.Y) / h0;
            double far = (third.Y - next.Y) / h1;
            double slope = ((2 * h0 + h1) * near - h0 * far) / (h0 + h1);
            if (slope * near <= 0)
                return 0;
            return near * far < 0 && Math.Abs(slope) > 3 * Math.Abs(near) ? 3 * near : slope;
        }
    }

    // The parts do not tell the material: of the moduli that wire of this diameter has, the nearest.
    private static double Nearest(double value, double wire, double[][] materials)
    {
        int band = new[] { 0.032, 0.063, 0.125 }.Count(limit => wire > limit * 0.0254 + 1e-9);
        return materials.Select(m => 1e9 * (m.Length == 1 ? m[0] : m[band])).MinBy(m => Math.Abs(m - value));
    }
}
