using UnitsNet;

namespace PartPicker.Quantities;

/// <summary>Writes SI values in the system that the caller asked for.</summary>
public static class QuantityWriter
{
    /// <summary>Rounds to the digits that each dimension is stated with, unless full precision is asked.</summary>
    public static WrittenQuantity Write(double si, QuantityInfo dimension, UnitSystem system, bool fullPrecision = false) =>
        throw new NotSupportedException($"{si} {dimension.Name} {system} {fullPrecision}");
}

/// <summary>A number and its unit, as they leave.</summary>
public sealed record WrittenQuantity(double Value, string Unit);

public enum UnitSystem
{
    Metric,
    Inch,
}
