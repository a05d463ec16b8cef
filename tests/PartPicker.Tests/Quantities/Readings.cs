using PartPicker.Quantities;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Quantities;

/// <summary>What several tests of this room ask of a reading.</summary>
internal static class Readings
{
    public static QuantityInfo Dimension(string name) =>
        UnitAliases.Dimensions.Single(dimension => dimension.Info.Name == name).Info;

    public static void AssertRead(double si, QuantityReading reading, double relativeTolerance)
    {
        Assert.Null(reading.Problem);
        Assert.Equal(si, reading.Value, relativeTolerance * Math.Abs(si));
    }

    /// <summary>The problem of a reading that was refused, and whose value therefore cannot be used.</summary>
    public static string AssertRefused(QuantityReading reading)
    {
        Assert.True(double.IsNaN(reading.Value));
        return Assert.IsType<string>(reading.Problem);
    }
}
