using System.Globalization;

namespace PartPicker.SampleCatalog;

/// <summary>Curves in millimetres, and how a cell holds them.</summary>
internal static class Points
{
    /// <summary>Every radius times a factor, and more of it with travel by a tilt.</summary>
    public static (double X, double Y)[] Bent(this (double X, double Y)[] curve, double factor, double tilt = 0) =>
        [.. curve.Select(p => (p.X, p.Y * factor + p.X * tilt))];

    public static string Cell(this (double X, double Y)[] curve) =>
        string.Join("; ", curve.Select(
            p => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.##} mm: {p.Y:0.##} mm")));

    public static string Grams(IEnumerable<double> masses) =>
        string.Join("; ", masses.Select(m => string.Create(CultureInfo.InvariantCulture, $"{m:0.##} g")));
}
