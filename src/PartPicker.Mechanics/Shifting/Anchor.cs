namespace PartPicker.Mechanics;

/// <summary>Ties the model to a measured run by one factor on flyweight thrust and one on belt thrust.</summary>
/// <remarks>
/// a_f = (n_e,model / n_e,measured)². At each measured shift rpm b_j = (1 − f) a_f ω² W − F₁ and
/// a_b = Σ b_j F_d,j / Σ F_d,j² (least squares; one point is met exactly). Common practice, no source.
/// </remarks>
public static class Anchor
{
    /// <summary>Usual range of both factors; outside it the profile, the parts or the measurement is wrong.</summary>
    public const double LeastUsualFactor = 0.7;

    /// <inheritdoc cref="LeastUsualFactor"/>
    public const double GreatestUsualFactor = 1.4;

    /// <summary>Frictions of belt on sheave that a solve may give (common practice, no source).</summary>
    public const double LeastFriction = 0.1;

    /// <inheritdoc cref="LeastFriction"/>
    public const double GreatestFriction = 1;

    /// <summary>Greatest over least ratio of shift points from which a friction may be solved (common practice, no source).</summary>
    public const double LeastRatioSpread = 1.5;

    // What two frictions leave of the run counts as the same within this share of its squares: both meet it.
    private const double SameSquares = 1e-12;

    /// <summary>The factors that make the measured set engage and shift as measured.</summary>
    /// <param name="unanchored">The machine in the air of the run, without factors, at the measured ratios.</param>
    /// <param name="drive">The drive side of the run, without factors.</param>
    /// <param name="driven">The driven side of the run.</param>
    /// <param name="frictionShare">f.</param>
    /// <param name="engagementRpm">n_e as measured; null where another device starts the machine: a_f is 1 then.</param>
    /// <param name="shiftRpm">Shift rpm as measured at each position of <paramref name="unanchored"/>, one or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A speed is not positive or lies beyond the engine's table.</exception>
    /// <exception cref="ArgumentException">Not one shift rpm for each position.</exception>
    public static AnchorFactors Solve(
        ShiftModel unanchored,
        DriveSide drive,
        DrivenSide driven,
        double frictionShare,
        double? engagementRpm,
        IReadOnlyList<double> shiftRpm)
    {
        Check(engagementRpm, shiftRpm, unanchored.Positions.Count);
        double flyweight = FlyweightFactor(drive, engagementRpm);
        double[] available = Available(drive, frictionShare, flyweight, shiftRpm);
        double[] asked = [.. shiftRpm.Select((rpm, j) => unanchored.UpshiftBeltThrust(rpm, driven, j))];
        return new AnchorFactors(flyweight, ThrustFactor(available, asked));
    }

    /// <summary>
    /// The belt friction and the factors that together meet the measured shift points best: least Σ (b_j − a_b F_d,j)².
    /// </summary>
    /// <param name="machine">The machine; its one belt friction is what is solved.</param>
    /// <param name="positions">Where shift rpm were measured, two or more; only ratios apart tell μ from a_b.</param>
    /// <param name="torqueFactor">Torque in the air of the run over torque at sea level.</param>
    /// <param name="drive">The drive side of the run at these positions, without factors.</param>
    /// <param name="driven">The driven side of the run.</param>
    /// <param name="engagementRpm">As in <see cref="Solve"/>; it does not depend on the friction.</param>
    /// <param name="shiftRpm">Shift rpm as measured at each position.</param>
    /// <returns>
    /// μ between <see cref="LeastFriction"/> and <see cref="GreatestFriction"/>, at one of which it stands where the best
    /// lies beyond; and the factors with it. Two points are met exactly where a friction of that range can. Where a friction
    /// with which the belt slips meets the run no better than one with which it grips, the one that grips is taken.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A speed is not positive or lies beyond the engine's table.</exception>
    /// <exception cref="ArgumentException">Fewer than two positions, or not one shift rpm for each.</exception>
    public static (double Friction, AnchorFactors Factors) SolveWithFriction(
        Drivetrain machine,
        IReadOnlyList<BeltPosition> positions,
        double torqueFactor,
        DriveSide drive,
        DrivenSide driven,
        double? engagementRpm,
        IReadOnlyList<double> shiftRpm)
    {
        if (positions.Count < 2)
            throw new ArgumentException("One shift point cannot tell friction from a factor.", nameof(positions));
        Check(engagementRpm, shiftRpm, positions.Count);
        double flyweight = FlyweightFactor(drive, engagementRpm);
        double[] available = Available(drive, machine.FlyweightFrictionShare, flyweight, shiftRpm);
        double[] torque = [.. shiftRpm.Select(rpm => torqueFactor * machine.Engine.At(rpm))];

        (double friction, double left) = Best(LeastFriction);
        double grips = LeastGripping();
        if (friction < grips && grips < GreatestFriction)
        {
            (double gripping, double leftThen) = Best(grips);
            if (leftThen <= left + SameSquares * available.Sum(b => b * b))
                friction = gripping;
        }

        return (friction, new AnchorFactors(flyweight, ThrustFactor(available, Asked(friction))));

        // The sum has a corner at every friction where a point begins to slip, and may dip narrowly beside it.
        (double Friction, double Left) Best(double least)
        {
            const int pieces = 36;
            (double at, double negative) = Maximum.Of(
                mu => -SumOfSquares(mu),
                [
                    .. Enumerable.Range(0, pieces + 1).Select(i => least + i * (GreatestFriction - least) / pieces)
                        .Concat(positions.Select((_, j) => Belt(1, j).Loading(Clamp(j), Tension(j)))
                            .Where(edge => edge > least && edge < GreatestFriction))
                        .Distinct()
                        .Order(),
                ]);
            return (at, -negative);
        }

        // More friction never grips less: one friction parts those that slip somewhere from those that slip nowhere.
        double LeastGripping()
        {
            if (Spare(LeastFriction) >= 0)
                return LeastFriction;
            return Spare(GreatestFriction) <= 0 ? GreatestFriction : Root.Between(Spare, LeastFriction, GreatestFriction);
        }

        // The least slip margin of the run, less 1; a point without torque does not slip.
        double Spare(double mu) => Enumerable.Range(0, positions.Count)
            .Select(j => Belt(mu, j).Load(Clamp(j), Tension(j)).SlipMargin)
            .Where(margin => !double.IsNaN(margin))
            .DefaultIfEmpty(double.MaxValue)
            .Min() - 1;

        double Clamp(int j) => driven.Upshift[j].At(torque[j]);

        double Tension(int j) => torque[j] / positions[j].DriveRadius;

        double[] Asked(double mu) => [.. positions.Select((_, j) => Belt(mu, j).DriveThrust(Clamp(j), Tension(j)))];

        BeltThrust Belt(double mu, int j) => new(
            machine.GrooveHalfAngle, mu, positions[j].DriveWrap, positions[j].DrivenWrap, machine.ThrustForm);

        double SumOfSquares(double mu)
        {
            double[] asked = Asked(mu);
            double factor = ThrustFactor(available, asked);
            double sum = 0;
            for (int j = 0; j < asked.Length; j++)
            {
                double left = available[j] - factor * asked[j];
                sum += left * left;
            }

            return sum;
        }
    }

    private static void Check(double? engagementRpm, IReadOnlyList<double> shiftRpm, int positions)
    {
        if (engagementRpm is <= 0)
            throw new ArgumentOutOfRangeException(nameof(engagementRpm), engagementRpm, "A measured speed is positive.");
        if (shiftRpm.Count == 0 || shiftRpm.Count != positions)
            throw new ArgumentException("A measured run needs one shift rpm for each position.", nameof(shiftRpm));
    }

    private static double FlyweightFactor(DriveSide drive, double? engagementRpm) =>
        engagementRpm is { } measured ? Math.Pow(drive.Engagement.Rpm / measured, 2) : 1;

    // b_j: what the drive clutch has left for the belt at each measured speed.
    private static double[] Available(
        DriveSide drive, double frictionShare, double flyweightFactor, IReadOnlyList<double> shiftRpm) =>
    [
        .. shiftRpm.Select((rpm, j) =>
        {
            double speed = Rotation.ToRadiansPerSecond(rpm);
            return (1 - frictionShare) * flyweightFactor * drive.ThrustPerSpeedSquared[j] * speed * speed
                - drive.SpringForce[j];
        }),
    ];

    private static double ThrustFactor(double[] available, double[] asked)
    {
        double thrustSquares = 0;
        double products = 0;
        for (int j = 0; j < asked.Length; j++)
        {
            products += available[j] * asked[j];
            thrustSquares += asked[j] * asked[j];
        }

        return products / thrustSquares;
    }
}
