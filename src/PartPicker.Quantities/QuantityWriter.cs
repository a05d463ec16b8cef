using UnitsNet;

namespace PartPicker.Quantities;

/// <summary>Writes SI values in the system that the caller asked for.</summary>
public static class QuantityWriter
{
    /// <summary>Rounds to the digits that each dimension is stated with, unless full precision is asked: then to 15 digits.</summary>
    /// <remarks>
    /// A half rounds away from zero, as on paper; zero never has a sign. The unit is one that
    /// <see cref="QuantityReader"/> reads.
    /// </remarks>
    /// <exception cref="ArgumentException">The dimension is not one of <see cref="UnitAliases"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite, in SI or in the unit.</exception>
    public static WrittenQuantity Write(
        double si, QuantityInfo dimension, UnitSystem system, bool fullPrecision = false)
    {
        UnitForm form = UnitAliases.For(dimension).In(system);
        double value = fullPrecision ? form.Unit.FromSiInFull(si) : form.Unit.FromSi(si);
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(si), si, $"Only a finite {dimension.Name} is written.");

        double written = fullPrecision ? value : Math.Round(value, form.Decimals, MidpointRounding.AwayFromZero);
        return new WrittenQuantity(written + 0.0, form.Unit.Symbol);
    }
}
