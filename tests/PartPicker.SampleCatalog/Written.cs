using System.Globalization;

namespace PartPicker.SampleCatalog;

/// <summary>A quantity as a supplier writes it. Computing goes on from the written number.</summary>
/// <param name="Si">What the text says, in SI.</param>
/// <param name="Text">The number with its unit.</param>
internal readonly record struct Written(double Si, string Text);

/// <summary>How one supplier writes: in millimetres and newtons, or in inches and pounds.</summary>
internal sealed class UnitStyle(bool inch)
{
    public const double Mm = 1e-3;
    public const double Inch = 25.4e-3;
    public const double PoundForce = 4.4482216152605;
    private const double SmallLoad = 200;

    public Written Wire(double metres) => inch ? Of(metres, Inch, 0.001, "in") : Of(metres, Mm, 0.05, "mm");

    public Written Length(double metres) => inch ? Of(metres, Inch, 0.01, "in") : Of(metres, Mm, 0.1, "mm");

    /// <summary>A length that a tenth of a millimetre would spoil.</summary>
    public Written FineLength(double metres) => inch ? Of(metres, Inch, 0.0001, "in") : Of(metres, Mm, 0.01, "mm");

    /// <summary>To the pound or newton, and finer where that would be per cents of the load.</summary>
    public Written Force(double newtons)
    {
        double step = newtons < SmallLoad ? 0.1 : 1;
        return inch ? Of(newtons, PoundForce, step, "lbf") : Of(newtons, 1, step, "N");
    }

    public Written Rate(double newtonsPerMetre) =>
        inch ? Of(newtonsPerMetre, PoundForce / Inch, 0.5, "lbf/in") : Of(newtonsPerMetre, 1e3, 0.05, "N/mm");

    public Written Torque(double newtonMetres) =>
        inch ? Of(newtonMetres, PoundForce * Inch, 0.5, "lbf·in") : Of(newtonMetres, 1, 0.05, "N·m");

    /// <summary>Nobody prints this one in pounds.</summary>
    public static Written TwistRate(double newtonMetresPerRadian) => Of(newtonMetresPerRadian, 1, 0.05, "N·m/rad");

    public static Written Grams(double grams, double step) => Of(grams, 1, step, "g");

    private static Written Of(double si, double unit, double step, string name)
    {
        double number = Math.Round(si / unit / step) * step;
        return new Written(number * unit, $"{number.ToString("0.####", CultureInfo.InvariantCulture)} {name}");
    }
}
