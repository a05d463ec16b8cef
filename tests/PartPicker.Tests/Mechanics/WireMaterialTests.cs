using PartPicker.Mechanics;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>The wire table at the limits of its diameter bands.</summary>
public sealed class WireMaterialTests
{
    // The limits are round in inches; the same wire stated in millimetres must fall into the same band.
    [Theory]
    [InlineData(0.032, 0.8128, 82.7)]
    [InlineData(0.063, 1.6002, 81.7)]
    [InlineData(0.125, 3.175, 81.0)]
    public void A_wire_at_a_limit_is_the_same_in_inches_and_in_millimetres(double inches, double mm, double shearGPa)
    {
        WireMaterial music = WireMaterial.Find("music-wire-a228")!;

        Assert.Equal(shearGPa, music.ShearModulus(Length.FromInches(inches)).Gigapascals, 1e-9);
        Assert.Equal(shearGPa, music.ShearModulus(Length.FromMillimeters(mm)).Gigapascals, 1e-9);
        Assert.True(music.ShearModulus(Length.FromInches(inches + 0.001)).Gigapascals < shearGPa);
    }

    [Fact]
    public void A_key_that_the_table_lacks_finds_nothing() => Assert.Null(WireMaterial.Find("no-such-wire"));

    [Fact]
    public void Keys_are_told_apart() =>
        Assert.Equal(WireMaterial.All.Count, WireMaterial.All.Select(m => m.Key).Distinct().Count());
}
