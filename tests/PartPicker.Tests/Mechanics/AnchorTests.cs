using CsCheck;
using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>A model tied to a measured run gives that run back.</summary>
public sealed class AnchorTests
{
    [Fact]
    public void An_anchored_model_engages_and_balances_as_measured() =>
        Gen.Select(RandomSetUp.FlatTorque, Gen.Double[0.9, 1.1], Gen.Double[1.2, 1.9], Gen.Int[0, 4])
            .Sample((setUp, engagementShare, shiftOverEngagement, position) =>
            {
                ShiftModel plain = setUp.Model();
                DriveSide drive = setUp.Drive(plain);
                double engagement = drive.Engagement.Rpm * engagementShare;
                double shift = engagement * shiftOverEngagement;
                if (shift > setUp.RevLimit)
                    return;

                var measured = new ShiftModel(
                    setUp.Machine(), [plain.Positions[position]], torqueFactor: 1, AnchorFactors.None);
                AnchorFactors factors = Anchor.Solve(
                    measured, setUp.Drive(measured), setUp.Driven(measured), setUp.FlyweightFriction, engagement,
                    [shift]);
                if (factors.Thrust <= 0)
                    return;

                ShiftModel anchored = setUp.Model(factors);
                DriveSide anchoredDrive = setUp.Drive(anchored);
                double? rpm = anchored.BalanceRpm(
                    anchoredDrive, setUp.Driven(anchored), position, ShiftDirection.Upshift);

                Relative.Equal(engagement, anchoredDrive.Engagement.Rpm, 1e-9);
                Assert.Equal(shift, rpm!.Value, 1e-6);
            });

    [Fact]
    public void A_run_without_speeds_is_refused()
    {
        RandomSetUp setUp = RandomSetUp.FlatTorque.Single();
        ShiftModel model = setUp.Model();
        DriveSide drive = setUp.Drive(model);
        DrivenSide driven = setUp.Driven(model);

        Assert.Throws<ArgumentException>(() => Anchor.Solve(model, drive, driven, 0, 2000, []));
        Assert.Throws<ArgumentException>(() => Anchor.Solve(model, drive, driven, 0, 2000, [7000]));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => Anchor.Solve(model, drive, driven, 0, 0, [7000, 7000, 7000, 7000, 7000]));
    }
}
