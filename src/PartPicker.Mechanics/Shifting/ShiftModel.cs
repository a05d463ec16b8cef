namespace PartPicker.Mechanics;

/// <summary>
/// One machine in one air: the full-throttle balance of drive and driven clutch at chosen positions of the belt.
/// </summary>
/// <remarks>
/// At each position (1 ∓ f) a_f ω² W − F₁ = a_b F_d(F_s, D), with D = Q/R₁ and Q the engine's torque in this air;
/// − and α − φ on the upshift, + and α + φ on the backshift. The rpm is the first at or above engagement where
/// the net closing thrust is 0 or more, looked for at engagement, at every multiple of 10 rpm above it and at
/// the rev limit, then narrowed in its bracket. Steady full throttle only; see the limits of the model.
/// SI units; rpm where named.
/// </remarks>
public sealed class ShiftModel
{
    /// <summary>Step of the scan for the first balance, in rpm.</summary>
    public const double ScanStepRpm = 10;

    private readonly Drivetrain machine;
    private readonly double torqueFactor;
    private readonly AnchorFactors anchor;
    private readonly BeltThrust[] thrusts;
    private readonly BeltThrustFloor[] floors;

    // Torque at sea level at every multiple of the scan step, shared by every scan.
    private readonly double[] torqueAtStep;

    private readonly double seaLevelPeakPower;

    /// <param name="machine">The machine without its parts.</param>
    /// <param name="positions">Where the balance is wanted.</param>
    /// <param name="torqueFactor">Torque in this air over torque at sea level.</param>
    /// <param name="anchor">Factors from a measured run, or <see cref="AnchorFactors.None"/>.</param>
    public ShiftModel(
        Drivetrain machine, IReadOnlyList<BeltPosition> positions, double torqueFactor, AnchorFactors anchor)
    {
        this.machine = machine;
        this.torqueFactor = torqueFactor;
        this.anchor = anchor;
        Positions = positions;
        thrusts = [.. positions.Select(p => new BeltThrust(
            machine.GrooveHalfAngle, machine.FrictionAt(p.DriveRadius), machine.FrictionAt(p.DrivenRadius),
            p.DriveWrap, p.DrivenWrap, machine.ThrustForm))];
        floors = [.. thrusts.Select(t => new BeltThrustFloor(t))];
        torqueAtStep = machine.Engine.AtSteps;
        TorqueSpans = machine.Engine.Spans;
        (PeakPowerRpm, seaLevelPeakPower) = machine.Engine.PeakPower();
    }

    private ShiftModel(ShiftModel same, double torqueFactor, AnchorFactors anchor)
    {
        machine = same.machine;
        thrusts = same.thrusts;
        floors = same.floors;
        torqueAtStep = same.torqueAtStep;
        TorqueSpans = same.TorqueSpans;
        Positions = same.Positions;
        PeakPowerRpm = same.PeakPowerRpm;
        seaLevelPeakPower = same.seaLevelPeakPower;
        this.torqueFactor = torqueFactor;
        this.anchor = anchor;
    }

    /// <summary>The same machine in the same air with other factors; what is tabulated is shared.</summary>
    public ShiftModel With(AnchorFactors factors) => new(this, torqueFactor, factors);

    /// <summary>The same machine with another share of its torque at sea level; what is tabulated is shared.</summary>
    public ShiftModel With(double otherTorqueFactor) => new(this, otherTorqueFactor, anchor);

    /// <summary>Where the balance is computed; arrays of the sides run along it.</summary>
    public IReadOnlyList<BeltPosition> Positions { get; }

    /// <summary>Rpm of greatest power up to the rev limit.</summary>
    public double PeakPowerRpm { get; }

    /// <summary>That power (W), in this air.</summary>
    public double PeakPower => seaLevelPeakPower * torqueFactor;

    /// <summary>The factors from the measured run.</summary>
    public AnchorFactors Anchor => anchor;

    /// <summary>Q (N·m) in this air at a speed (rpm) up to the rev limit.</summary>
    public double TorqueAt(double rpm) => torqueFactor * machine.Engine.At(rpm);

    /// <summary>Least and greatest Q (N·m) in this air between two speeds (rpm) up to the rev limit.</summary>
    public (double Least, double Greatest) TorqueRange(double fromRpm, double toRpm)
    {
        (double least, double greatest) = machine.Engine.Range(fromRpm, toRpm);
        return (torqueFactor * least, torqueFactor * greatest);
    }

    /// <summary>Least and greatest dQ/dn (N·m per rpm) in this air between two speeds (rpm) up to the rev limit.</summary>
    public (double Least, double Greatest) TorqueSlopeRange(double fromRpm, double toRpm)
    {
        (double least, double greatest) = machine.Engine.SlopeRange(fromRpm, toRpm);
        return (torqueFactor * least, torqueFactor * greatest);
    }

    internal double RevLimitRpm => machine.RevLimitRpm;

    /// <summary>Multiples of the scan step up to the rev limit, 0 among them.</summary>
    internal int StepCount => torqueAtStep.Length;

    /// <summary>Torque at sea level over spans of steps, the longest first.</summary>
    internal TorqueSpans[] TorqueSpans { get; }

    internal ref readonly BeltThrust Thrust(int j) => ref thrusts[j];

    internal BeltThrustFloor Floor(int j) => floors[j];

    internal double InThisAir(double seaLevelTorque) => torqueFactor * seaLevelTorque;

    /// <summary>Q (N·m) in this air at a multiple of the scan step.</summary>
    internal double TorqueAtStep(int step) => torqueFactor * torqueAtStep[step];

    /// <summary>Prepares a drive spring and a flyweight set.</summary>
    /// <param name="spring">Force (N) over length (m), known from l₁ − x_f to l₁.</param>
    /// <param name="flyweights">Known from 0 to x_f, thrust positive there.</param>
    /// <param name="shimThickness">Shims under the spring (m): they shorten l₁.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length or a travel leaves its curve.</exception>
    /// <exception cref="ArgumentException">The spring nowhere pushes before contact.</exception>
    public DriveSide Drive(LinearCurve spring, FlyweightSet flyweights, double shimThickness = 0) => new(
        EngagementOf(spring, flyweights, shimThickness),
        [.. Positions.Select(p => anchor.Flyweight * flyweights.ThrustPerSpeedSquared(p.Travel))],
        [.. Positions.Select(p => spring.At(machine.DriveSpringLength - shimThickness - p.Travel))]);

    /// <summary>Where a drive spring and a flyweight set engage; see <see cref="Drive"/>.</summary>
    public Engagement EngagementOf(LinearCurve spring, FlyweightSet flyweights, double shimThickness = 0) => Engagement.Of(
        spring, machine.DriveSpringLength - shimThickness, flyweights, machine.ContactTravel,
        machine.FlyweightFrictionShare, anchor.Flyweight);

    /// <summary>Prepares a driven spring in a hole with a helix.</summary>
    /// <param name="axial">Axial force (N) over length (m), known from l₂ − y(x_f) to l₂.</param>
    /// <param name="twist">Torque (N·m) over twist (rad), known from ψ₀ to ψ₀ + Θ(y(x_f)).</param>
    /// <param name="preloadTwist">ψ₀, twist in low gear (rad).</param>
    /// <param name="helix">The cam, locking itself neither way: 0 &lt; α − φ and α + φ &lt; π/2.</param>
    /// <param name="stiffeningCoils">Nₐ, where the twist shall stiffen the axial force by (1 + θ/Nₐ)²; null: it does not.</param>
    /// <exception cref="ArgumentException">The helix locks itself at a position.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A length or a twist leaves its curve.</exception>
    public DrivenSide Driven(
        LinearCurve axial, LinearCurve twist, double preloadTwist, HelixCam helix, double? stiffeningCoils = null)
    {
        double friction = machine.CamFrictionAngle;
        double[] angles = [.. Positions.Select(p => helix.Angle(p.OpeningTravel))];
        if (angles.Any(a => !(a - friction > 0 && a + friction < Math.PI / 2)))
        {
            throw new ArgumentException(
                "A helix angle is too flat or too steep for the friction of the cam.", nameof(helix));
        }

        double[] turns = [.. Positions.Select(p => helix.Turn(p.OpeningTravel))];
        return new DrivenSide(
            angles, turns, Clamps(-friction), Clamps(friction));

        ClampLine[] Clamps(double signedFriction) =>
        [
            .. Positions.Select((p, j) =>
            {
                double lever = machine.CamRadius * Math.Tan(angles[j] + signedFriction);
                double stiffening = stiffeningCoils is { } coils
                    ? HelicalSpring.TwistStiffening((preloadTwist + turns[j]) / (2 * Math.PI), coils)
                    : 1;
                double springForce = stiffening * axial.At(machine.DrivenSpringLength - p.OpeningTravel);
                return new ClampLine(
                    springForce + twist.At(preloadTwist + turns[j]) / lever,
                    machine.CamTorqueShare * machine.BeltEfficiency * p.Ratio / lever);
            }),
        ];
    }

    /// <summary>The balance rpm at position j, or null where it does not shift below the rev limit.</summary>
    public double? BalanceRpm(DriveSide drive, DrivenSide driven, int j, ShiftDirection direction) =>
        Balances(drive, driven, direction).Rpm(j);

    /// <summary>The balances of two sides, for whoever wants more than one of them.</summary>
    public BalanceFinder Balances(DriveSide drive, DrivenSide driven, ShiftDirection direction) =>
        new(this, drive, driven, direction, machine.FlyweightFrictionShare);

    /// <summary>Speed and loads at position j, or null where it does not shift below the rev limit.</summary>
    public ShiftBalance? Balance(DriveSide drive, DrivenSide driven, int j, ShiftDirection direction) =>
        BalanceRpm(drive, driven, j, direction) is { } rpm ? LoadsAt(rpm, drive, driven, j, direction) : null;

    /// <summary>F_d that the belt asks for on the upshift at a speed (N), a_b left out.</summary>
    public double UpshiftBeltThrust(double rpm, DrivenSide driven, int j)
    {
        double torque = TorqueAt(rpm);
        return thrusts[j].DriveThrust(driven.Upshift[j].At(torque), torque / Positions[j].DriveRadius);
    }

    /// <summary>Slip margin on the upshift at a speed; +∞ where there is no torque to slip under.</summary>
    public double UpshiftSlipMargin(double rpm, DrivenSide driven, int j)
    {
        double torque = TorqueAt(rpm);
        double margin = thrusts[j].Load(driven.Upshift[j].At(torque), torque / Positions[j].DriveRadius).SlipMargin;
        return double.IsNaN(margin) ? double.PositiveInfinity : margin;
    }

    /// <summary>The greatest D/F_s at which the slip margin at position j is this one or more; +∞ for a margin of 0.</summary>
    public double LoadAtSlipMargin(double margin, int j) => thrusts[j].LoadAtSlipMargin(margin);

    /// <summary>
    /// The rpm at which the drive clutch stops slipping in low gear, where
    /// (1 − f) a_f ω² W − F₁ = a_b D/(2 μ_e tan β) at contact; null where the rev limit comes first.
    /// </summary>
    /// <param name="drive">The drive side, prepared for positions whose first is at contact.</param>
    /// <remarks>
    /// Looked for as a balance is: from engagement by steps of 10 rpm to the rev limit. Both anchor factors apply, as in
    /// the balance: the thrust of the active arc is a part of what the belt asks, so that the two-arc form never locks up
    /// above its low-gear upshift. Source: the limit of the two-arc thrust, every bit of the wrap active.
    /// </remarks>
    public double? LockUpRpm(DriveSide drive)
    {
        double limit = machine.RevLimitRpm;
        double below = drive.Engagement.Rpm;
        if (below > limit)
            return null;
        if (Net(below) >= 0)
            return below;
        for (int step = (int)(below / ScanStepRpm) + 1; below < limit; step++)
        {
            double rpm = Math.Min(step * ScanStepRpm, limit);
            if (Net(rpm) >= 0)
                return Root.Between(Net, below, rpm);
            below = rpm;
        }

        return null;

        double Net(double rpm)
        {
            double speed = Rotation.ToRadiansPerSecond(rpm);
            return (1 - machine.FlyweightFrictionShare) * drive.ThrustPerSpeedSquared[0] * speed * speed
                - drive.SpringForce[0]
                - anchor.Thrust * thrusts[0].SlipEdge(TorqueAt(rpm) / Positions[0].DriveRadius);
        }
    }

    /// <summary>
    /// Share of any torque that the helix alone can hold on the driven clutch: q η R₂ 2μ₂/(cos β r_c tan α). At 1 or more
    /// the driven clutch cannot slip, whatever the torque and however weak its spring.
    /// </summary>
    /// <remarks>
    /// μ₂ at R₂, cam friction left out. From 2 tan β F_s μ_e ≥ D with F_s = q η Q i/(r_c tan α) and D = Q/R₁. Source: the
    /// slip limit of <see cref="BeltThrust"/> and the virtual work of the cam.
    /// </remarks>
    public double HelixHold(DrivenSide driven, int j) =>
        machine.CamTorqueShare * machine.BeltEfficiency * Positions[j].DrivenRadius
        * 2 * machine.FrictionAt(Positions[j].DrivenRadius)
        / (Math.Cos(machine.GrooveHalfAngle) * machine.CamRadius * Math.Tan(driven.HelixAngle[j]));

    /// <summary>What position j carries at a speed (rpm) up to the rev limit, whether the clutches balance there or not.</summary>
    public ShiftBalance LoadsAt(double rpm, DriveSide drive, DrivenSide driven, int j, ShiftDirection direction)
    {
        BeltPosition position = Positions[j];
        double speed = Rotation.ToRadiansPerSecond(rpm);
        double torque = TorqueAt(rpm);
        double clamp = (direction == ShiftDirection.Upshift ? driven.Upshift : driven.Backshift)[j].At(torque);
        BeltLoad belt = thrusts[j].Load(clamp, torque / position.DriveRadius);
        double beltSpeed = speed * position.DriveRadius;
        return new ShiftBalance(
            rpm,
            torque,
            torque * speed,
            PeakPower - torque * speed,
            clamp,
            anchor.Thrust * belt.DriveThrust,
            drive.ThrustPerSpeedSquared[j] * speed * speed,
            drive.SpringForce[j],
            belt,
            machine.BeltMassPerLength * beltSpeed * beltSpeed,
            beltSpeed,
            speed * machine.TyreRadius / (position.Ratio * machine.FinalDrive));
    }
}
