using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>Equality of two numbers within a share of the expected one.</summary>
internal static class Relative
{
    public static void Equal(double expected, double actual, double tolerance) =>
        Assert.Equal(expected, actual, tolerance * Math.Abs(expected));
}
