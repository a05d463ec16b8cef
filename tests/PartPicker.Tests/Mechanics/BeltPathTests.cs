using CsCheck;
using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>A belt keeps its length at every ratio, and its travels follow from its wraps.</summary>
public sealed class BeltPathTests
{
    private const double ContactTravel = 0.003;

    private static readonly Gen<Drive> Drives =
        from centres in Gen.Double[0.22, 0.32]
        from driveRadius in Gen.Double[0.025, 0.045]
        from ratio in Gen.Double[2.2, 3.3]
        from halfAngle in Gen.Double[11, 15]
        select new Drive(centres, driveRadius, driveRadius * ratio, halfAngle * Math.PI / 180);

    private static readonly Gen<double> Ratios = Gen.Double[0.6, 3.5];

    [Fact]
    public void The_belt_keeps_its_length_at_any_ratio() =>
        Gen.Select(Drives, Ratios).Sample((drive, ratio) =>
        {
            BeltPosition at = drive.Path.AtRatio(ratio);

            Assert.Equal(drive.Length, BeltPath.Length(at.DriveRadius, at.DrivenRadius, drive.Centres), 1e-13);
            Relative.Equal(ratio, at.Ratio, 1e-12);

            // Wraps and straight runs add up to the same length.
            double straight = Math.Sqrt(Math.Pow(drive.Centres, 2) - Math.Pow(at.DrivenRadius - at.DriveRadius, 2));
            Assert.Equal(
                drive.Length,
                at.DriveWrap * at.DriveRadius + at.DrivenWrap * at.DrivenRadius + 2 * straight,
                1e-13);
        });

    [Fact]
    public void Travel_and_ratio_lead_to_the_same_position() =>
        Gen.Select(Drives, Ratios).Sample((drive, ratio) =>
        {
            BeltPosition byRatio = drive.Path.AtRatio(ratio);
            BeltPosition byTravel = drive.Path.AtTravel(byRatio.Travel);

            Assert.Equal(byRatio.DriveRadius, byTravel.DriveRadius, 1e-14);
            Assert.Equal(byRatio.DrivenRadius, byTravel.DrivenRadius, 1e-14);
            Assert.Equal(byRatio.OpeningTravel, byTravel.OpeningTravel, 1e-14);
        });

    [Fact]
    public void Low_gear_is_where_travel_meets_the_belt() =>
        Drives.Sample(drive =>
        {
            BeltPosition low = drive.Path.AtTravel(ContactTravel);

            Assert.Equal(drive.DriveRadius, low.DriveRadius, 1e-15);
            Assert.Equal(drive.DrivenRadius, low.DrivenRadius, 1e-14);
            Assert.Equal(0, low.OpeningTravel, 1e-15);
        });

    [Fact]
    public void The_driven_sheave_opens_by_the_ratio_of_the_wraps() =>
        Gen.Select(Drives, Gen.Double[0.0001, 0.02]).Sample((drive, beyondContact) =>
        {
            const double step = 1e-6;
            double x = ContactTravel + beyondContact;
            double opened = drive.Path.AtTravel(x + step).OpeningTravel - drive.Path.AtTravel(x - step).OpeningTravel;
            BeltPosition at = drive.Path.AtTravel(x);

            Relative.Equal(at.DriveWrap / at.DrivenWrap, opened / (2 * step), 1e-7);
        });

    [Fact]
    public void Positions_are_spaced_evenly_by_ratio_with_both_ends() =>
        Gen.Select(Drives, Gen.Int[2, 15]).Sample((drive, count) =>
        {
            const double fullShift = ContactTravel + 0.018;
            BeltPosition[] positions = drive.Path.EvenlyByRatio(ContactTravel, fullShift, count);

            Assert.Equal(count, positions.Length);
            Assert.Equal(ContactTravel, positions[0].Travel);
            Assert.Equal(fullShift, positions[^1].Travel);
            double step = (positions[^1].Ratio - positions[0].Ratio) / (count - 1);
            for (int j = 1; j < count; j++)
                Assert.Equal(step, positions[j].Ratio - positions[j - 1].Ratio, 1e-12);
        });

    [Fact]
    public void The_ends_are_where_contact_and_full_shift_are() =>
        Drives.Sample(drive =>
        {
            (double Drive, double? Driven)[] ends =
                [.. BeltPath.Ends(drive.Centres, drive.Length, drive.DriveRadius, 0.018, drive.HalfAngle)];
            BeltPosition[] path = [drive.Path.AtTravel(ContactTravel), drive.Path.AtTravel(ContactTravel + 0.018)];

            Assert.Equal(path.Select(p => p.DriveRadius), ends.Select(e => e.Drive));
            Assert.Equal(path.Select(p => (double?)p.DrivenRadius), ends.Select(e => e.Driven));
        });

    [Fact]
    public void An_end_without_a_belt_has_no_driven_radius() =>
        Assert.Equal(
            [false, true],
            BeltPath.Ends(0.27, BeltPath.Length(0.034, 0.1, 0.27), 0.034, 0.2, 0.23).Select(e => e.Driven is null));

    [Fact]
    public void One_position_is_no_spacing() =>
        Assert.Throws<ArgumentOutOfRangeException>(
            () => new Drive(0.27, 0.034, 0.1, 0.23).Path.EvenlyByRatio(ContactTravel, 0.02, 1));

    [Theory]
    [InlineData(0.4)]
    [InlineData(3.0)]
    [InlineData(double.NaN)]
    public void A_belt_that_cannot_run_there_is_refused(double length) =>
        Assert.Throws<ArgumentException>(() => new BeltPath(0.27, length, 0.034, ContactTravel, 0.23));

    [Fact]
    public void Sheaves_that_differ_by_their_distance_have_no_belt() =>
        Assert.Throws<ArgumentException>(() => BeltPath.Length(0, 0.25, 0.25));

    [Fact]
    public void A_travel_that_leaves_the_driven_sheave_no_radius_is_refused() =>
        Assert.Throws<ArgumentException>(() => new Drive(0.27, 0.034, 0.1, 0.23).Path.AtTravel(0.2));

    private sealed record Drive(double Centres, double DriveRadius, double DrivenRadius, double HalfAngle)
    {
        public double Length => BeltPath.Length(DriveRadius, DrivenRadius, Centres);

        public BeltPath Path => new(Centres, Length, DriveRadius, ContactTravel, HalfAngle);
    }
}
