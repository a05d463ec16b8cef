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

    // A machine of known friction and factors makes the run; the solve, which starts from another friction, gives them back.
    [Fact]
    public void Friction_and_factor_behind_a_run_are_found_again() =>
        Gen.Select(RandomSetUp.FlatTorque, Gen.Double[0.85, 1.2]).Sample(
            (setUp, thrust) =>
            {
                ShiftModel truth = setUp.Model(new AnchorFactors(1, thrust));
                DriveSide drive = setUp.Drive(truth);
                DrivenSide driven = setUp.Driven(truth);
                double?[] rpm = [.. Enumerable.Range(0, 5).Select(j => truth.BalanceRpm(drive, driven, j, ShiftDirection.Upshift))];
                if (rpm.Any(n => n is null || n <= drive.Engagement.Rpm))
                    return;

                (double friction, AnchorFactors factors) = Anchor.SolveWithFriction(
                    setUp.Machine() with { BeltFriction = 0.9 }, truth.Positions, 1, drive, driven, drive.Engagement.Rpm,
                    [.. rpm.Select(n => n!.Value)]);

                ShiftModel again = (setUp with { BeltFriction = friction }).Model(factors);
                for (int j = 0; j < 5; j++)
                    Assert.Equal(rpm[j]!.Value, again.BalanceRpm(drive, driven, j, ShiftDirection.Upshift)!.Value, 0.05);

                // A slipping belt pushes by 1/μ, which the factor takes up: such a run tells nothing of the friction.
                if (Enumerable.Range(0, 5).Any(j => truth.Balance(drive, driven, j, ShiftDirection.Upshift)!.Value.Slips))
                    return;
                Assert.Equal(setUp.BeltFriction, friction, 1e-3);
                Relative.Equal(thrust, factors.Thrust, 5e-3);
            },
            // The first is a dip beside an edge of slip, found at random.
            seed: "7AhZ4yfRguU3",
            iter: 200);

    // Two points at the ends of the travel tell as much; the grip of the best belts is still within reach.
    [Theory]
    [InlineData(0.12)]
    [InlineData(0.36)]
    [InlineData(0.98)]
    public void Two_points_far_apart_tell_friction_from_factor(double friction) =>
        RandomSetUp.FlatTorque.Sample(setUp =>
        {
            setUp = setUp with { BeltFriction = friction };
            ShiftModel all = setUp.Model();
            var truth = new ShiftModel(setUp.Machine(), [all.Positions[0], all.Positions[^1]], 1, new AnchorFactors(1, 1.1));
            DriveSide drive = setUp.Drive(truth);
            DrivenSide driven = setUp.Driven(truth);
            ShiftBalance?[] run = [truth.Balance(drive, driven, 0, ShiftDirection.Upshift), truth.Balance(drive, driven, 1, ShiftDirection.Upshift)];
            if (run.Any(b => b is null || b.Value.Slips || b.Value.Rpm <= drive.Engagement.Rpm))
                return;

            (double solved, AnchorFactors factors) = Anchor.SolveWithFriction(
                setUp.Machine() with { BeltFriction = 0.4 }, truth.Positions, 1, drive, driven, drive.Engagement.Rpm,
                [.. run.Select(b => b!.Value.Rpm)]);

            var again = new ShiftModel(setUp.Machine() with { BeltFriction = solved }, truth.Positions, 1, factors);
            Assert.Equal(run[0]!.Value.Rpm, again.BalanceRpm(drive, driven, 0, ShiftDirection.Upshift)!.Value, 0.1);
            Assert.Equal(run[1]!.Value.Rpm, again.BalanceRpm(drive, driven, 1, ShiftDirection.Upshift)!.Value, 0.1);

            // A slipping belt of another friction may meet two points as well; this run was made by one that grips.
            for (int j = 0; j < 2; j++)
                Assert.True(again.UpshiftSlipMargin(run[j]!.Value.Rpm, driven, j) >= 1 - 1e-6);
        });

    [Theory]
    [InlineData(1.3)]
    [InlineData(0.07)]
    public void A_friction_beyond_the_usual_is_not_solved(double friction) =>
        RandomSetUp.FlatTorque.Sample(setUp =>
        {
            setUp = setUp with { BeltFriction = friction };
            ShiftModel truth = setUp.Model();
            DriveSide drive = setUp.Drive(truth);
            DrivenSide driven = setUp.Driven(truth);
            double?[] rpm = [.. truth.Positions.Select((_, j) => truth.BalanceRpm(drive, driven, j, ShiftDirection.Upshift))];
            if (rpm.Any(n => n is null))
                return;
            (double solved, _) = Anchor.SolveWithFriction(
                setUp.Machine(), truth.Positions, 1, drive, driven, drive.Engagement.Rpm, [.. rpm.Select(n => n!.Value)]);
            Assert.InRange(solved, Anchor.LeastFriction - 1e-12, Anchor.GreatestFriction + 1e-12);
        });

    [Fact]
    public void One_point_or_a_run_that_was_not_read_tells_no_friction()
    {
        RandomSetUp setUp = RandomSetUp.FlatTorque.Single();
        ShiftModel model = setUp.Model();
        DriveSide drive = setUp.Drive(model);
        DrivenSide driven = setUp.Driven(model);

        Assert.Contains("One shift point", Solve(1, 2000, [7000]).Message);
        Assert.Contains("one shift rpm for each", Solve(5, 2000, [7000, 7000]).Message);
        Assert.Contains("positive", Solve(2, 0, [7000, 7000]).Message);

        ArgumentException Solve(int positions, double engagement, double[] rpm) => Assert.ThrowsAny<ArgumentException>(
            () => Anchor.SolveWithFriction(setUp.Machine(), [.. model.Positions.Take(positions)], 1, drive, driven, engagement, rpm));
    }

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
