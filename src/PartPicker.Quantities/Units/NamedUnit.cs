using System.Globalization;

namespace PartPicker.Quantities;

/// <summary>A unit that is read and written, with every spelling that stands for it.</summary>
/// <remarks>
/// SI value = (value + offset) · times / over. Two numbers instead of one factor, because 1000 is exact in
/// binary and 0.001 is not: millimetres and grams then come back as they were sent.
/// </remarks>
public sealed class NamedUnit
{
    private readonly double times;
    private readonly double over;
    private readonly double offset;

    internal NamedUnit(
        Enum? unitsNetUnit, double times, double over, string[] spellings, bool anyCase, double offset = 0)
    {
        UnitsNetUnit = unitsNetUnit;
        Spellings = spellings;
        AnyCase = anyCase;
        this.times = times;
        this.over = over;
        this.offset = offset;
    }

    /// <summary>The unit of UnitsNet that this is; null where that library has none.</summary>
    public Enum? UnitsNetUnit { get; }

    /// <summary>Every spelling; a product is listed with "·" and also read with another sign between.</summary>
    public IReadOnlyList<string> Spellings { get; }

    /// <summary>The spelling that answers are written with.</summary>
    public string Symbol => Spellings[0];

    /// <summary>Capitals do not matter: true only for units that take no metric prefix.</summary>
    public bool AnyCase { get; }

    public double ToSi(double value) => (value + offset) * times / over;

    public double FromSi(double si) => (si * over / times) - offset;

    /// <summary>The same with the digits that survive the way to SI and back, and no others.</summary>
    public double FromSiInFull(double si)
    {
        double value = double.Parse(
            (si * over / times).ToString(SurvivingDigits, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return offset == 0 ? value : Math.Round(value - offset, SurvivingDecimals);
    }

    // The 16th digit may change on the way, and no text of a catalog has one.
    private const string SurvivingDigits = "G15";

    // Digits count from the zero of the absolute scale: three of them stand before the point.
    private const int SurvivingDecimals = 12;
}
