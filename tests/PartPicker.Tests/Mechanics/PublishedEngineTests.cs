using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>Torque between the points of an openly published table; key as in docs/sources.md.</summary>
public sealed class PublishedEngineTests
{
    // ENG-1, [NREL]: a 1.0 litre engine of 1991, torque (N·m) by rad/s; the table's header says 41 kW at 5700
    // rpm.
    private static readonly EngineTorque Engine = new(
        new (double RadPerS, double Nm)[]
        {
            (104.5, 61), (149.2, 67.6), (220.9, 73.7), (292.5, 78.5), (364.1, 80.9),
            (435.7, 77.3), (507.4, 76.2), (552.2, 73.3), (596.9, 68.7),
        }.Select(p => (Rotation.ToRpm(p.RadPerS), p.Nm)),
        revLimitRpm: 5690);

    // Recomputed by a second implementation of the same published interpolation [FRI].
    [Trait("Outside", "ENG-1")]
    [Theory]
    [InlineData(2000, 72.845)]
    [InlineData(3000, 79.497)]
    [InlineData(4500, 76.776)]
    [InlineData(5000, 75.462)]
    [InlineData(5500, 71.090)]
    public void Torque_between_the_points_is_that_of_a_monotone_cubic(double rpm, double torque) =>
        Assert.Equal(torque, Engine.At(rpm), 5e-4);

    // The peak lies between the last two points, where the table itself only shows 40.48 and 41.01 kW.
    [Trait("Outside", "ENG-1")]
    [Fact]
    public void Peak_power_lies_between_the_points()
    {
        (double rpm, double power) = Engine.PeakPower();

        Assert.Equal(5640.0702, rpm, 1e-4);
        Assert.Equal(41_020.03, power, 0.01);
    }
}
