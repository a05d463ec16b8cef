using UnitsNet;

namespace PartPicker.Quantities;

/// <summary>Reads a quantity as a shop writes it, into SI.</summary>
public static class QuantityReader
{
    /// <summary>Reads number and unit from one text, as in "0.192 in".</summary>
    public static QuantityReading Read(string text, QuantityInfo dimension) =>
        throw new NotSupportedException(text + dimension.Name);

    /// <summary>Reads a number that came apart from its unit.</summary>
    public static QuantityReading Read(double value, string unit, QuantityInfo dimension) =>
        throw new NotSupportedException($"{value} {unit} {dimension.Name}");
}

/// <summary>A value in SI, or the sentence that says what is wrong and how to write it.</summary>
public readonly record struct QuantityReading(double Value, string? Problem);
