using PartPicker.Mechanics;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>The torque cam against power screws, which are the same inclined plane; keys as in docs/sources.md.</summary>
public sealed class PublishedCamTests
{
    // CAM-1, [KG] ex. 10.10: screw of 50 mm, pitch 12.5 mm, friction 0.13, 25 kN; printed 132 629 N·mm
    // because the helix angle is rounded, 4.2 and 37.6 %.
    [Fact]
    [Trait("Outside", "CAM-1")]
    public void Raising_lowering_and_efficiency_are_those_of_Khurmi_10_10()
    {
        double lead = 12.5 / (Math.PI * 50);
        double raising = TorqueOf(25_000, 25, lead, +Math.Atan(0.13));
        double lowering = -TorqueOf(25_000, 25, lead, -Math.Atan(0.13));

        Relative.Equal(132_355, raising, 2e-6);
        Relative.Equal(4.2433, raising / lowering, 1e-5);
        Relative.Equal(0.37578, TorqueOf(25_000, 25, lead, 0) / raising, 1e-5);
    }

    // [SAD] ex. 9.1: mean diameter 23.5 mm, lead 10 mm, friction 0.2, 10 kN; recomputed 40 513 N·mm.
    [Fact]
    [Trait("Outside", "SAD 9.1")]
    public void Raising_is_that_of_Sadhu_Singh_9_1() =>
        Relative.Equal(40_513, TorqueOf(10_000, 11.75, 10 / (Math.PI * 23.5), Math.Atan(0.2)), 1e-5);

    // Not published, recomputed: half of 50 N·m on a cam of 40 mm, without friction and with 0.1.
    [Theory]
    [InlineData(30, 0, 1082.53)]
    [InlineData(36, 0, 860.24)]
    [InlineData(40, 0, 744.85)]
    [InlineData(45, 0, 625.00)]
    [InlineData(36, +0.1, 701.22)]
    [InlineData(36, -0.1, 1070.01)]
    public void A_helix_clamps_by_its_angle_and_friction(double degrees, double friction, double newtons) =>
        Assert.Equal(
            newtons,
            HelixCam.Thrust(
                Torque.FromNewtonMeters(25),
                Length.FromMillimeters(40),
                Angle.FromDegrees(degrees),
                Angle.FromRadians(Math.Atan(friction))).Newtons,
            5e-3);

    // CAM-3, [US 4592737], abstract: about 45° when driving and 30° under reverse power; tan 45°/tan 30° = √3 of clamp per
    // torque, as recomputed.
    [Trait("Outside", "CAM-3")]
    [Fact]
    public void A_flatter_reverse_flank_clamps_by_the_ratio_of_tangents()
    {
        double driving = HelixCam.Thrust(Torque.FromNewtonMeters(25), Length.FromMillimeters(40), Angle.FromDegrees(45), Angle.Zero).Newtons;
        double reverse = HelixCam.Thrust(Torque.FromNewtonMeters(25), Length.FromMillimeters(40), Angle.FromDegrees(30), Angle.Zero).Newtons;
        Relative.Equal(1.732, reverse / driving, 5e-5);
    }

    // The torque (N·mm) that holds a force on a thread of this mean radius (mm), from the thrust of 1 N·m.
    private static double TorqueOf(double newtons, double radiusMm, double slope, double signedFriction) =>
        1000 * newtons / HelixCam.Thrust(
            Torque.FromNewtonMeters(1),
            Length.FromMillimeters(radiusMm),
            Angle.FromRadians(Math.Atan(slope)),
            Angle.FromRadians(signedFriction)).Newtons;
}
