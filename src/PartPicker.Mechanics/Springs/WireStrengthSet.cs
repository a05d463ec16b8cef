using UnitsNet;

namespace PartPicker.Mechanics;

/// <summary>Least tensile strength of one wire over one span of diameters.</summary>
/// <param name="Wire">Key of the wire: of <see cref="WireMaterial"/>, or the grade of a standard.</param>
/// <param name="FromMm">Least diameter, mm.</param>
/// <param name="ToMm">Greatest diameter, mm.</param>
/// <param name="MegapascalsAt">Strength (MPa) over diameter (mm).</param>
public sealed record StrengthFit(string Wire, double FromMm, double ToMm, Func<double, double> MegapascalsAt);

/// <summary>A named set of strengths; sets differ, so an answer names the one it used.</summary>
public sealed class WireStrengthSet
{
    // The same wire in inches and in millimetres differs in its last digit; far below any wire tolerance.
    private const double PlayMm = 1e-6;

    private WireStrengthSet(string key, string source, IReadOnlyList<StrengthFit> fits)
    {
        Key = key;
        Source = source;
        this.fits = fits;
    }

    /// <summary>S_ut = A/dᵐ of [SHI] Table 10-4: the set that the rules use.</summary>
    /// <remarks>Spans are the wider of the two columns of the table, inch and millimetre, which round apart.</remarks>
    public static WireStrengthSet Shigley { get; } = new("shigley", "[SHI] Table 10-4",
    [
        Power("music-wire-a228", 0.10, 6.5024, 2211, 0.145),
        Power("oil-tempered-a229", 0.5, 12.7, 1855, 0.187),
        Power("hard-drawn-a227", 0.7, 12.7, 1783, 0.190),
        Power("chrome-vanadium-a232", 0.8, 11.1, 2005, 0.168),
        Power("chrome-silicon-a401", 1.6, 9.525, 1974, 0.108),
        Power("stainless-302-a313", 0.3, 2.54, 1867, 0.146),
        Power("stainless-302-a313", 2.54, 5.08, 2065, 0.263),
        Power("stainless-302-a313", 5.08, 10.16, 2911, 0.478),
    ]);

    /// <summary>Another set of A and m in circulation, some 10 % lower for drawn wire.</summary>
    /// <remarks>Seen on calculator pages without spans, which are taken from Table 10-4; its origin is not known.</remarks>
    public static WireStrengthSet Circulating { get; } = new("circulating", "calculator pages, no book seen",
    [
        OverTheSpanOfShigley("music-wire-a228", 2060, 0.163),
        OverTheSpanOfShigley("oil-tempered-a229", 1610, 0.193),
        OverTheSpanOfShigley("hard-drawn-a227", 1510, 0.201),
        OverTheSpanOfShigley("chrome-vanadium-a232", 1790, 0.155),
        OverTheSpanOfShigley("chrome-silicon-a401", 1960, 0.091),
    ]);

    /// <summary>Fits R_m = a − b lg d to the tables of EN 10270-1 and -2, by grade; two circulate for SM and DM.</summary>
    /// <remarks>Through a secondary source; "sm-dm-1980" and the spans of diameter are from memory.</remarks>
    public static WireStrengthSet En10270 { get; } = new("en-10270", "[EN 10270-1], [EN 10270-2], fits",
    [
        Logarithm("sh", 0.3, 20, 2220, 820),
        Logarithm("dh", 0.05, 20, 2218, 817),
        Logarithm("sm-dm-1971", 0.3, 20, 1971, 740),
        Logarithm("sm-dm-1980", 0.3, 20, 1980, 740),
        Logarithm("sl", 1, 10, 1712, 660),
        Logarithm("fdsicr", 0.5, 17, 2103, 435),
        Logarithm("fdcrv", 0.5, 17, 1906, 464),
        Logarithm("vdsicr", 0.5, 10, 2125, 466),
    ]);

    /// <summary>Every set; the rules use <see cref="Shigley"/> alone.</summary>
    public static IReadOnlyList<WireStrengthSet> All { get; } = [Shigley, Circulating, En10270];

    /// <summary>How the set is named.</summary>
    public string Key { get; }

    /// <summary>Where it is from, by the keys of docs/sources.md where it has one.</summary>
    public string Source { get; }

    private readonly IReadOnlyList<StrengthFit> fits;

    /// <summary>Diameters (mm) over which the set has a wire.</summary>
    public ValidRange DiameterRange(string wire)
    {
        StrengthFit[] own = [.. fits.Where(f => f.Wire == wire)];
        return new(
            $"wire-diameter/{wire}", $"wire diameter of {wire}", own.Min(f => f.FromMm), own.Max(f => f.ToMm), "mm",
            "Outside, no strength is known and stress is not checked.", Source);
    }

    /// <summary>S_ut of a wire; null where the set does not have it at this diameter: nothing is extrapolated.</summary>
    public Pressure? Tensile(string wire, Length wireDiameter)
    {
        double mm = wireDiameter.Millimeters;
        return fits.FirstOrDefault(f => f.Wire == wire && mm >= f.FromMm - PlayMm && mm <= f.ToMm + PlayMm) is { } fit
            ? Pressure.FromMegapascals(fit.MegapascalsAt(mm))
            : null;
    }

    private static StrengthFit Power(string wire, double fromMm, double toMm, double a, double m) =>
        new(wire, fromMm, toMm, mm => a / Math.Pow(mm, m));

    private static StrengthFit OverTheSpanOfShigley(string wire, double a, double m)
    {
        ValidRange span = Shigley.DiameterRange(wire);
        return Power(wire, span.Least, span.Greatest, a, m);
    }

    private static StrengthFit Logarithm(string wire, double fromMm, double toMm, double a, double b) =>
        new(wire, fromMm, toMm, mm => a - b * Math.Log10(mm));
}
