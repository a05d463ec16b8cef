using CsCheck;
using PartPicker.Mechanics;
using PartPicker.TestKit;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>The balance of both clutches against a plain search for it, and the laws that it keeps.</summary>
public sealed class ShiftModelTests
{
    private static readonly ShiftDirection[] Directions = [ShiftDirection.Upshift, ShiftDirection.Backshift];

    [Fact]
    public void Balance_is_that_of_the_plain_search()
    {
        int balanced = 0;
        int atEngagement = 0;
        int none = 0;
        Gen.Select(RandomSetUp.Any, Gen.Double[0.8, 1.3], Gen.Double[0.8, 1.3], Gen.Double[0.6, 1.1]).Sample((setUp, flyweight, thrust, air) =>
        {
            ShiftModel model = setUp.Model(new AnchorFactors(flyweight, thrust)).With(air);
            DriveSide drive = setUp.Drive(model);
            DrivenSide driven = setUp.Driven(model);
            var plain = new PlainCurve(setUp.Machine(), model.Positions, air, thrust);
            for (int j = 0; j < model.Positions.Count; j++)
            {
                foreach (ShiftDirection direction in Directions)
                {
                    double? expected = plain.Rpm(drive, driven, j, direction);
                    double? actual = model.BalanceRpm(drive, driven, j, direction);

                    Assert.Equal(expected is null, actual is null);
                    if (expected is { } rpm)
                        Assert.Equal(rpm, actual!.Value, 1e-6);
                    Interlocked.Increment(
                        ref expected is null ? ref none
                        : ref expected == drive.Engagement.Rpm ? ref atEngagement
                        : ref balanced);
                }
            }
        });

        // A search that always ended in one of the three ways would prove little.
        Assert.True(balanced > 0 && atEngagement > 0 && none > 0, $"{balanced} {atEngagement} {none}");
    }

    [Fact]
    public void Loads_at_the_balance_are_those_of_its_speed() =>
        RandomSetUp.Any.Sample(setUp =>
        {
            ShiftModel model = setUp.Model();
            DriveSide drive = setUp.Drive(model);
            DrivenSide driven = setUp.Driven(model);
            for (int j = 0; j < model.Positions.Count; j++)
            {
                if (model.Balance(drive, driven, j, ShiftDirection.Upshift) is not { } b)
                    continue;
                double speed = b.Rpm * Math.PI / 30;
                Relative.Equal(b.EngineTorque * speed, b.Power, 1e-12);
                Assert.True(b.PowerLost >= -1e-9 * model.PeakPower);
                Relative.Equal(
                    b.EngineTorque / model.Positions[j].DriveRadius, b.Belt.TightNet - b.Belt.SlackNet, 1e-9);

                // Above engagement both clutches are in balance; at engagement the drive side may have thrust
                // to spare.
                double spare = (1 - setUp.FlyweightFriction) * b.FlyweightThrust - b.SpringForce - b.DriveThrust;
                if (b.Rpm > drive.Engagement.Rpm)
                    Assert.Equal(0, spare, 1e-6);
                else
                    Assert.True(spare >= 0);
            }
        });

    [Fact]
    public void Thrust_and_margin_by_themselves_are_those_of_the_balance() =>
        Gen.Select(RandomSetUp.Any, Gen.Double[0.8, 1.3], Gen.Double[0.6, 1.1]).Sample((setUp, thrust, air) =>
        {
            ShiftModel model = setUp.Model(new AnchorFactors(1, thrust)).With(air);
            DrivenSide driven = setUp.Driven(model);
            for (int j = 0; j < model.Positions.Count; j++)
            {
                if (model.Balance(setUp.Drive(model), driven, j, ShiftDirection.Upshift) is not { } b)
                    continue;
                Relative.Equal(b.DriveThrust, thrust * model.UpshiftBeltThrust(b.Rpm, driven, j), 1e-12);
                Relative.Equal(b.Belt.SlipMargin, model.UpshiftSlipMargin(b.Rpm, driven, j), 1e-12);
                Relative.Equal(air * setUp.Machine().Engine.At(b.Rpm), b.EngineTorque, 1e-12);
            }
        });

    [Fact]
    public void Without_torque_nothing_slips()
    {
        RandomSetUp setUp = RandomSetUp.FlatTorque.Single() with { Torque = new double[10] };
        ShiftModel model = setUp.Model();
        Assert.Equal(double.PositiveInfinity, model.UpshiftSlipMargin(3000, setUp.Driven(model), 0));
    }

    [Fact]
    public void Torque_lies_within_its_range_and_reaches_both_ends() =>
        Gen.Select(RandomSetUp.Any, Gen.Double[0.6, 1.1], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((setUp, air, a, b) =>
        {
            ShiftModel model = setUp.Model().With(air);
            (double from, double to) = (6000 * Math.Min(a, b), 6000 * Math.Max(a, b));
            (double least, double greatest) = model.TorqueRange(from, to);
            double[] torques = [.. Enumerable.Range(0, 2001).Select(i => model.TorqueAt(from + (to - from) * i / 2000))];

            // Between samples of 3 rpm torque moves by less than this.
            Assert.InRange(torques.Min() - least, -1e-9, 0.3);
            Assert.InRange(greatest - torques.Max(), -1e-9, 0.3);
        });

    // By the wound coil: (1 + θ/Nₐ)² on the axial force alone, θ in turns.
    [Fact]
    public void Twist_stiffens_the_driven_spring_where_that_is_asked() =>
        Gen.Select(RandomSetUp.Any, Gen.Double[3, 8]).Sample((setUp, coils) =>
        {
            ShiftModel model = setUp.Model();
            LinearCurve axial = LinearCurve.Line(0.06, setUp.DrivenPreload, -setUp.DrivenRate, 0.01, 0.06);
            LinearCurve twist = LinearCurve.Line(0, 0, setUp.TwistRate, 0, 20);
            var helix = new HelixCam([(0, setUp.HelixStart), (0.012, setUp.HelixEnd)], 0.042);
            DrivenSide plain = model.Driven(axial, twist, setUp.PreloadTwist, helix);
            DrivenSide stiff = model.Driven(axial, twist, setUp.PreloadTwist, helix, coils);
            for (int j = 0; j < model.Positions.Count; j++)
            {
                double turns = (setUp.PreloadTwist + helix.Turn(model.Positions[j].OpeningTravel)) / (2 * Math.PI);
                double force = axial.At(0.06 - model.Positions[j].OpeningTravel);
                double more = force * (Math.Pow(1 + turns / coils, 2) - 1);
                Assert.Equal(more, stiff.Upshift[j].Standing - plain.Upshift[j].Standing, 1e-9 * force);
                Assert.Equal(more, stiff.Backshift[j].Standing - plain.Backshift[j].Standing, 1e-9 * force);
                Assert.Equal(plain.Upshift[j].PerTorque, stiff.Upshift[j].PerTorque);
            }
        });

    [Fact]
    public void Springs_masses_and_torque_scaled_together_change_no_speed() =>
        Gen.Select(RandomSetUp.Any, Gen.Double[0.3, 3]).Sample((setUp, factor) =>
        {
            RandomSetUp scaled = setUp with { ForceScale = factor };
            Assert.Equal(EngagementRpm(setUp), EngagementRpm(scaled), 1e-6);
            foreach ((double? plain, double? same) in Rpms(setUp).Zip(Rpms(scaled)))
            {
                Assert.Equal(plain is null, same is null);
                Assert.Equal(plain ?? 0, same ?? 0, 1e-6);
            }
        });

    [Fact]
    public void More_mass_never_raises_a_speed() =>
        Gen.Select(RandomSetUp.FlatTorque, Gen.Double[0, 0.02], Gen.Bool).Sample((setUp, more, atTip) =>
            NeverRises(
                setUp,
                atTip ? setUp with { TipMass = setUp.TipMass + more } : setUp with { ArmMass = setUp.ArmMass + more }));

    [Fact]
    public void More_preload_never_lowers_a_speed() =>
        Gen.Select(RandomSetUp.FlatTorque, Gen.Double[0, 300]).Sample((setUp, more) =>
            NeverRises(setUp with { MorePreload = more }, setUp));

    [Fact]
    public void More_clamp_never_lowers_a_speed() =>
        Gen.Select(RandomSetUp.FlatTorque, Gen.Double[0, 1], Gen.Double[0, 200]).Sample((setUp, twist, preload) =>
            NeverRises(
                setUp with { PreloadTwist = setUp.PreloadTwist + twist, DrivenPreload = setUp.DrivenPreload + preload },
                setUp));

    // The frictions hold the ratio where it is: it climbs late and falls back late.
    [Fact]
    public void Backshift_is_never_above_upshift() =>
        RandomSetUp.FlatTorque.Sample(setUp =>
        {
            ShiftModel model = setUp.Model();
            DriveSide drive = setUp.Drive(model);
            DrivenSide driven = setUp.Driven(model);
            for (int j = 0; j < model.Positions.Count; j++)
            {
                double up = model.BalanceRpm(drive, driven, j, ShiftDirection.Upshift) ?? double.PositiveInfinity;
                double back = model.BalanceRpm(drive, driven, j, ShiftDirection.Backshift) ?? double.PositiveInfinity;
                Assert.True(back <= up + 1e-6, $"{back} above {up}");
            }
        });

    // By definition, from the parts themselves: at lock-up the drive clutch presses the belt with just the active arc's share.
    [Fact]
    public void Lock_up_is_where_the_drive_clutch_holds_the_whole_torque() =>
        Gen.Select(RandomSetUp.Any, Gen.Double[0.8, 1.3], Gen.Double[0.8, 1.3], Gen.Bool).Sample((setUp, flyweight, thrust, dips) =>
        {
            // An engine that misses at every other point may lock up, slip and lock up again: the first counts.
            if (dips)
                setUp = setUp with { Torque = [.. setUp.Torque.Select((nm, i) => i % 2 == 0 ? nm : 0.05 * nm)] };
            ShiftModel model = setUp.Model(new AnchorFactors(flyweight, thrust));
            DriveSide drive = setUp.Drive(model);
            double engagement = drive.Engagement.Rpm;
            double? lockUp = model.LockUpRpm(drive);
            if (lockUp is not { } rpm)
            {
                Assert.True(engagement > setUp.RevLimit || Spare(setUp.RevLimit) < 0);
                return;
            }

            Assert.InRange(rpm, engagement, setUp.RevLimit);
            Assert.True(rpm == engagement ? Spare(rpm) >= 0 : Math.Abs(Spare(rpm)) < 1e-6);
            for (double n = 10 * (Math.Floor(engagement / 10) + 1); n < rpm - 1e-6; n += 10)
                Assert.True(Spare(n) < 0, $"held at {n} already");

            // The active arc is a part of what the balance asks for: the ratio never moves before lock-up.
            if (!setUp.Locked && model.BalanceRpm(drive, setUp.Driven(model), 0, ShiftDirection.Upshift) is { } shift)
                Assert.True(rpm <= shift + 1e-6);

            double Spare(double n)
            {
                double speed = n * Math.PI / 30;
                double tension = setUp.Machine().Engine.At(n) / model.Positions[0].DriveRadius;
                double grip = setUp.BeltFriction / Math.Sin(setUp.HalfAngle);
                return (1 - setUp.FlyweightFriction) * flyweight * setUp.Flyweights().Thrust(RandomSetUp.ContactTravel, speed)
                    - setUp.DriveSpring().At(0.07 - RandomSetUp.ContactTravel)
                    - thrust * tension / (2 * grip * Math.Tan(setUp.HalfAngle));
            }
        });

    // Without springs and cam friction the driven clutch slips under every torque, or under none.
    [Fact]
    public void A_helix_holds_alone_where_a_springless_driven_clutch_does_not_slip() =>
        Gen.Select(RandomSetUp.Any, Gen.Double[1, 200]).Sample((setUp, torque) =>
        {
            setUp = setUp with { CamFriction = 0, DrivenPreload = 0, DrivenRate = 0, TwistRate = 0 };
            ShiftModel model = setUp.Model();
            DrivenSide driven = setUp.Driven(model);
            for (int j = 0; j < model.Positions.Count; j++)
            {
                BeltPosition at = model.Positions[j];
                BeltLoad load = new BeltThrust(setUp.HalfAngle, setUp.BeltFriction, at.DriveWrap, at.DrivenWrap)
                    .Load(driven.Upshift[j].At(torque), torque / at.DriveRadius);
                double hold = model.HelixHold(driven, j);
                if (Math.Abs(hold - 1) > 1e-9)
                    Assert.Equal(hold < 1, load.DrivenSlips);
            }
        });

    [Fact]
    public void Engagement_goes_by_the_root_of_force_over_mass() =>
        Gen.Select(RandomSetUp.Any, Gen.Double[0.2, 5]).Sample((setUp, factor) =>
        {
            RandomSetUp heavier = setUp with { ArmMass = factor * setUp.ArmMass, TipMass = factor * setUp.TipMass };
            RandomSetUp stiffer = setUp with { SpringForces = [.. setUp.SpringForces.Select(f => factor * f)] };
            Relative.Equal(EngagementRpm(setUp) / Math.Sqrt(factor), EngagementRpm(heavier), 1e-9);
            Relative.Equal(EngagementRpm(setUp) * Math.Sqrt(factor), EngagementRpm(stiffer), 1e-9);
        });

    [Fact]
    public void A_level_friction_by_radius_is_one_friction() =>
        RandomSetUp.Any.Sample(setUp =>
        {
            Drivetrain level = setUp.Machine() with
            {
                BeltFriction = double.NaN,
                BeltFrictionByRadius = LinearCurve.Table([(0.02, setUp.BeltFriction), (0.2, setUp.BeltFriction)]),
            };
            ShiftModel one = setUp.Model();
            var same = new ShiftModel(level, one.Positions, 1, AnchorFactors.None);
            for (int j = 0; j < one.Positions.Count; j++)
            {
                double? expected = one.BalanceRpm(setUp.Drive(one), setUp.Driven(one), j, ShiftDirection.Upshift);
                double? actual = same.BalanceRpm(setUp.Drive(same), setUp.Driven(same), j, ShiftDirection.Upshift);
                Assert.Equal(expected ?? 0, actual ?? 0, 1e-6);
            }
        });

    [Fact]
    public void A_balance_just_under_the_rev_limit_is_found_and_one_just_above_is_not()
    {
        int found = 0;
        Gen.Select(RandomSetUp.FlatTorque, Gen.Int[0, 4]).Sample((setUp, position) =>
        {
            double engagement = EngagementRpm(setUp);
            if (Rpms(setUp)[position] is not { } rpm || rpm <= engagement + 1)
                return;

            Assert.Equal(rpm, Rpms(setUp with { RevLimit = rpm + 0.001 })[position]!.Value, 1e-6);
            Assert.Null(Rpms(setUp with { RevLimit = rpm - 0.001 })[position]);
            Interlocked.Increment(ref found);
        });
        Assert.True(found > 0);
    }

    [Fact]
    public void Engagement_beyond_the_rev_limit_shifts_nowhere()
    {
        RandomSetUp setUp = RandomSetUp.FlatTorque.Single();
        setUp = setUp with { MorePreload = 50_000 };
        ShiftModel model = setUp.Model();
        DriveSide drive = setUp.Drive(model);

        Assert.True(drive.Engagement.Rpm > setUp.RevLimit);
        Assert.All(Rpms(setUp), rpm => Assert.Null(rpm));
    }

    // A spring on shims is the same spring, longer by them.
    [Fact]
    public void Shims_do_what_a_longer_spring_does() =>
        Gen.Select(RandomSetUp.Any, Gen.Double[0.0001, 0.002]).Sample((setUp, shims) =>
        {
            ShiftModel model = setUp.Model();
            DriveSide onShims = model.Drive(setUp.DriveSpring(), setUp.Flyweights(), shims);
            DriveSide longer = model.Drive(setUp.DriveSpring().Moved(shims, 1, 0), setUp.Flyweights());

            Relative.Equal(longer.Engagement.Rpm, onShims.Engagement.Rpm, 1e-9);
            for (int j = 0; j < model.Positions.Count; j++)
                Relative.Equal(longer.SpringForce[j], onShims.SpringForce[j], 1e-9);
        });

    // The limit itself counts: where a machine that may turn higher shifts at once, it shifts there.
    [Fact]
    public void Engagement_at_the_rev_limit_still_shifts_and_locks_up()
    {
        int shifted = 0;
        int locked = 0;
        Gen.Select(RandomSetUp.Any, Gen.Bool).Sample((setUp, light) =>
        {
            // An arm that gains leverage under a level spring, and next to nothing to move: it shifts as it engages.
            if (light)
            {
                setUp = setUp with
                {
                    Radii = [0.04, 0.041, 0.045, 0.052, 0.062],
                    SpringForces = [.. Enumerable.Range(0, 5).Select(i => setUp.SpringForces[0] + i)],
                    Torque = [.. setUp.Torque.Select(nm => 0.01 * nm)],
                    DrivenPreload = 1,
                    DrivenRate = 10,
                    TwistRate = 0.01,
                };
            }

            double engagement = EngagementRpm(setUp);
            if (engagement >= 9000)
                return;
            ShiftModel free = (setUp with { RevLimit = 9500 }).Model();
            ShiftModel held = (setUp with { RevLimit = engagement }).Model();
            DriveSide drive = setUp.Drive(held);
            DrivenSide driven = setUp.Driven(held);
            for (int j = 0; j < held.Positions.Count; j++)
            {
                double? rpm = held.BalanceRpm(drive, driven, j, ShiftDirection.Backshift);
                Assert.Equal(free.BalanceRpm(drive, driven, j, ShiftDirection.Backshift) is { } n && n == engagement, rpm == engagement);
                Interlocked.Add(ref shifted, rpm is null ? 0 : 1);
            }

            Assert.Equal(free.LockUpRpm(drive) is { } lockUp && lockUp == engagement, held.LockUpRpm(drive) == engagement);
            Interlocked.Add(ref locked, held.LockUpRpm(drive) is null ? 0 : 1);
        });
        Assert.True(shifted > 0 && locked > 0, $"{shifted} {locked}");
    }

    [Theory]
    [InlineData(0.01, 0.01, 0.02)]
    [InlineData(1.56, 1.56, 0.02)]
    [InlineData(0.7, 0.01, 0.02)]
    public void A_helix_that_friction_locks_is_refused(double start, double end, double friction)
    {
        RandomSetUp setUp = RandomSetUp.FlatTorque.Single() with
        {
            HelixStart = start,
            HelixEnd = end,
            CamFriction = friction,
        };
        ShiftModel model = setUp.Model();

        Assert.Throws<ArgumentException>(() => setUp.Driven(model));
    }

    private static void NeverRises(RandomSetUp from, RandomSetUp to)
    {
        Assert.True(EngagementRpm(to) <= EngagementRpm(from) + 1e-9);
        foreach ((double? before, double? after) in Rpms(from).Zip(Rpms(to)))
        {
            double was = before ?? double.PositiveInfinity;
            double now = after ?? double.PositiveInfinity;
            Assert.True(now <= was + 1e-6, $"{was} rose to {now}");
        }
    }

    private static double EngagementRpm(RandomSetUp setUp) => setUp.Drive(setUp.Model()).Engagement.Rpm;

    private static List<double?> Rpms(RandomSetUp setUp)
    {
        ShiftModel model = setUp.Model();
        DriveSide drive = setUp.Drive(model);
        DrivenSide driven = setUp.Driven(model);
        return
        [
            .. Directions.SelectMany(direction =>
                Enumerable.Range(0, model.Positions.Count).Select(j => model.BalanceRpm(drive, driven, j, direction))),
        ];
    }
}
