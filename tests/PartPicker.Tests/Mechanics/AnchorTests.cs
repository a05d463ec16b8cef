using CsCheck;
using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>A model tied to a measured run gives that run back.</summary>
public sealed class AnchorTests
{
    [Fact]
    public void An_anchored_model_engages_and_balances_as_measured()
    {
        int tied = 0;
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
                Interlocked.Increment(ref tied);
            });
        Assert.True(tied >= LeastTried, $"{tied}");
    }

    // A machine of known friction and factors makes the run; the solve, which starts from another friction, gives them back.
    [Fact]
    public void Friction_and_factor_behind_a_run_are_found_again()
    {
        int told = 0;
        Gen.Select(RandomSetUp.FlatTorque, Gen.Double[0.85, 1.2]).Sample(
            (setUp, thrust) =>
            {
                if (Measured(setUp, thrust, gripping: false) is not { } run)
                    return;
                var truth = new ShiftModel(setUp.Machine(), run.Positions, 1, new AnchorFactors(1, thrust));
                DriveSide drive = setUp.Drive(truth);
                DrivenSide driven = setUp.Driven(truth);
                (double friction, AnchorFactors factors) = Anchor.SolveWithFriction(
                    setUp.Machine() with { BeltFriction = 0.9 }, run.Positions, 1, drive, driven, drive.Engagement.Rpm, run.Rpm);

                var again = new ShiftModel(setUp.Machine() with { BeltFriction = friction }, run.Positions, 1, factors);
                for (int j = 0; j < run.Rpm.Length; j++)
                    Assert.Equal(run.Rpm[j], again.BalanceRpm(drive, driven, j, ShiftDirection.Upshift)!.Value, 0.05);

                // A slipping belt pushes by 1/μ, which the factor takes up: such a run tells nothing of the friction.
                if (run.Rpm.Length < 3 || Enumerable.Range(0, run.Rpm.Length).Any(j => truth.UpshiftSlipMargin(run.Rpm[j], driven, j) < 1))
                    return;
                Assert.Equal(setUp.BeltFriction, friction, 1e-3);
                Relative.Equal(thrust, factors.Thrust, 5e-3);
                Interlocked.Increment(ref told);
            },
            // The first is a dip beside an edge of slip, found at random.
            seed: "7AhZ4yfRguU3",
            iter: Drawn);
        Assert.True(told >= LeastTried, $"{told}");
    }

    // Two points far apart tell as much; the grip of the best belts is still within reach.
    [Theory]
    [InlineData(0.28)]
    [InlineData(0.36)]
    [InlineData(0.98)]
    public void Two_points_far_apart_tell_friction_from_factor(double friction)
    {
        int met = 0;
        RandomSetUp.FlatTorque.Sample(setUp =>
        {
            setUp = setUp with { BeltFriction = friction };
            if (Measured(setUp, 1.1, gripping: true) is not { } all)
                return;
            (BeltPosition[] positions, double[] rpm) = ([all.Positions[0], all.Positions[^1]], [all.Rpm[0], all.Rpm[^1]]);
            var truth = new ShiftModel(setUp.Machine(), positions, 1, new AnchorFactors(1, 1.1));
            DriveSide drive = setUp.Drive(truth);
            DrivenSide driven = setUp.Driven(truth);

            (double solved, AnchorFactors factors) = Anchor.SolveWithFriction(
                setUp.Machine() with { BeltFriction = 0.4 }, positions, 1, drive, driven, drive.Engagement.Rpm, rpm);

            // A slipping belt of another friction may meet two points as well; this run was made by one that grips.
            var again = new ShiftModel(setUp.Machine() with { BeltFriction = solved }, positions, 1, factors);
            for (int j = 0; j < 2; j++)
            {
                Assert.Equal(rpm[j], again.BalanceRpm(drive, driven, j, ShiftDirection.Upshift)!.Value, 0.1);
                Assert.True(again.UpshiftSlipMargin(rpm[j], driven, j) >= 1 - 1e-6);
            }

            Interlocked.Increment(ref met);
        }, iter: Drawn);
        Assert.True(met >= LeastTried, $"{met}");
    }

    [Theory]
    [InlineData(1.3)]
    [InlineData(0.07)]
    public void A_friction_beyond_the_usual_is_not_solved(double friction)
    {
        int tried = 0;
        int atTheEnd = 0;
        RandomSetUp.FlatTorque.Sample(setUp =>
        {
            setUp = setUp with { BeltFriction = friction };
            if (Measured(setUp, 1, gripping: friction > 1) is not { } run)
                return;
            var truth = new ShiftModel(setUp.Machine(), run.Positions, 1, AnchorFactors.None);
            DriveSide drive = setUp.Drive(truth);
            (double solved, _) = Anchor.SolveWithFriction(
                setUp.Machine(), run.Positions, 1, drive, setUp.Driven(truth), drive.Engagement.Rpm, run.Rpm);

            // Of frictions within the usual an end is the nearest, unless one with which the belt slips does as well.
            Assert.InRange(solved, Anchor.LeastFriction, Anchor.GreatestFriction);
            Interlocked.Increment(ref tried);
            Interlocked.Add(ref atTheEnd, solved > Anchor.GreatestFriction - 1e-6 ? 1 : 0);
        }, iter: Drawn);
        Assert.True(tried >= LeastTried, $"{tried}");
        Assert.True(friction < 1 || atTheEnd >= LeastTried, $"{atTheEnd}");
    }

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

    // Most random machines do not shift everywhere: of so many drawn so few at least must have tried the property.
    private const int Drawn = 400;
    private const int LeastTried = 5;

    /// <summary>Where a machine with a factor on its belt thrust shifts above engagement, and at which speeds; null below two such places far apart.</summary>
    /// <param name="gripping">Only where its belt does not slip.</param>
    private static (BeltPosition[] Positions, double[] Rpm)? Measured(RandomSetUp setUp, double thrust, bool gripping)
    {
        ShiftModel truth = setUp.Model(new AnchorFactors(1, thrust));
        DriveSide drive = setUp.Drive(truth);
        DrivenSide driven = setUp.Driven(truth);
        (BeltPosition Position, double Rpm)[] read =
        [
            .. truth.Positions.Select((p, j) => (Position: p, Balance: truth.Balance(drive, driven, j, ShiftDirection.Upshift)))
                .Where(r => r.Balance is { } b && b.Rpm > drive.Engagement.Rpm && !(gripping && b.Slips))
                .Select(r => (r.Position, r.Balance!.Value.Rpm)),
        ];
        return read.Length >= 2 && read[0].Position.Ratio >= Anchor.LeastRatioSpread * read[^1].Position.Ratio
            ? ([.. read.Select(r => r.Position)], [.. read.Select(r => r.Rpm)])
            : null;
    }
}
