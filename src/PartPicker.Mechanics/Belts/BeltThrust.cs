using UnitsNet;

namespace PartPicker.Mechanics;

/// <summary>How a belt carries its tension around the drive sheave.</summary>
public enum DriveThrustForm
{
    /// <summary>Idle arc at entry tension, then an active arc.</summary>
    TwoArc,

    /// <summary>Entry tension over the whole wrap.</summary>
    Locked,
}

/// <summary>What a belt between two sheaves carries. Forces in N, angles in rad.</summary>
/// <param name="TightNet">T₁′, entry tension at the drive sheave less the centrifugal part.</param>
/// <param name="SlackNet">T₂′, the other one.</param>
/// <param name="ActiveArc">θ_a2, arc of the driven sheave over which the tension changes.</param>
/// <param name="DriveActiveArc">θ_a1, that of the drive sheave; the same where both sheaves grip alike.</param>
/// <param name="SlipMargin">Least wrap over active arc; below 1 the belt slips. NaN without active arc.</param>
/// <param name="DrivenSlips">True where the clamp cannot carry the torque on the driven sheave.</param>
/// <param name="DriveThrust">F_d, axial force that the belt asks of the drive clutch.</param>
public readonly record struct BeltLoad(
    double TightNet,
    double SlackNet,
    double ActiveArc,
    double DriveActiveArc,
    double SlipMargin,
    bool DrivenSlips,
    double DriveThrust);

/// <summary>
/// Axial thrust of a V-belt in two grooves: an active arc of creeping belt and an idle arc at entry tension.
/// </summary>
/// <remarks>
/// On each sheave θ_a = ln(T₁′/T₂′)/μ_e with its own μ_e = μ/sin β. Driven: F_s = [T₂′(θ₂ − θ_a2) + D/μ_e2]/(2 tan β).
/// Drive: F_d = [T₁′ max(0, θ₁ − θ_a1) + D/μ_e1]/(2 tan β), or, locked, T₁′θ₁/(2 tan β). D = T₁′ − T₂′. Where
/// 2 tan β F_s μ_e2 &lt; D the belt slips on the driven sheave; then T₂′ = D/(e^{μ_e2 θ₂} − 1), which continues the
/// solution without a jump. Source: classical V-belt equations with wedge friction, after [KG] ch. 11; the integral of
/// the active arc is checked by quadrature.
/// </remarks>
public readonly struct BeltThrust
{
    private const int MaxSteps = 60;
    private readonly double wrap1;
    private readonly double wrap2;
    private readonly double twiceTan;
    private readonly double friction1;
    private readonly double friction2;
    private readonly double slackAtSlip;
    private readonly DriveThrustForm form;

    /// <summary>A belt that both sheaves grip alike.</summary>
    /// <param name="halfAngle">β, half of the groove angle (rad), 0 &lt; β &lt; π/2.</param>
    /// <param name="friction">μ, friction of belt on sheave, positive.</param>
    /// <param name="driveWrap">θ₁ (rad).</param>
    /// <param name="drivenWrap">θ₂ (rad).</param>
    /// <param name="form">How the drive sheave carries the belt.</param>
    public BeltThrust(
        double halfAngle,
        double friction,
        double driveWrap,
        double drivenWrap,
        DriveThrustForm form = DriveThrustForm.TwoArc)
        : this(halfAngle, friction, friction, driveWrap, drivenWrap, form)
    {
    }

    /// <summary>A belt that grips each sheave by its own friction.</summary>
    /// <param name="halfAngle">β, half of the groove angle (rad), 0 &lt; β &lt; π/2.</param>
    /// <param name="driveFriction">μ₁, friction on the drive sheave, positive.</param>
    /// <param name="drivenFriction">μ₂, friction on the driven sheave, positive.</param>
    /// <param name="driveWrap">θ₁ (rad).</param>
    /// <param name="drivenWrap">θ₂ (rad).</param>
    /// <param name="form">How the drive sheave carries the belt.</param>
    public BeltThrust(
        double halfAngle,
        double driveFriction,
        double drivenFriction,
        double driveWrap,
        double drivenWrap,
        DriveThrustForm form)
    {
        wrap1 = driveWrap;
        wrap2 = drivenWrap;
        twiceTan = 2 * Math.Tan(halfAngle);
        friction1 = GrooveFriction(driveFriction, halfAngle);
        friction2 = GrooveFriction(drivenFriction, halfAngle);
        slackAtSlip = 1 / (Math.Exp(friction2 * drivenWrap) - 1);
        this.form = form;
    }

    /// <summary>How the drive sheave carries the belt.</summary>
    public DriveThrustForm Form => form;

    /// <summary>Friction of a belt wedged in a groove: μ_e = μ / sin β.</summary>
    /// <param name="friction">μ, friction of belt on sheave.</param>
    /// <param name="halfAngle">β, half of the groove angle (rad), 0 &lt; β ≤ π/2; at π/2 the belt is flat.</param>
    /// <remarks>Source: [KG] ch. 11.</remarks>
    public static double GrooveFriction(double friction, double halfAngle) => friction / Math.Sin(halfAngle);

    /// <summary>T_c = m v², tension that turning the belt takes: no sheave feels it.</summary>
    /// <param name="massPerLength">m, belt mass per length.</param>
    /// <param name="beltSpeed">v, belt speed.</param>
    /// <remarks>Source: [KG] ch. 11.</remarks>
    public static Force CentrifugalTension(LinearDensity massPerLength, Speed beltSpeed) =>
        Force.FromNewtons(massPerLength.KilogramsPerMeter * Math.Pow(beltSpeed.MetersPerSecond, 2));

    /// <summary>What the belt carries under a driven clamp and an effective tension.</summary>
    /// <param name="drivenClamp">F_s (N); below 0 counts as 0.</param>
    /// <param name="effectiveTension">D = Q/R₁ (N), 0 or more.</param>
    public BeltLoad Load(double drivenClamp, double effectiveTension)
    {
        double needed = Needed(drivenClamp);
        bool slips = needed * friction2 < effectiveTension;
        (double slack, double log) = SlackAndLog(needed, effectiveTension);
        double arc1 = log / friction1;
        double arc2 = log / friction2;
        double margin = log > 0 ? Math.Min(wrap1 / arc1, wrap2 / arc2) : double.NaN;
        if (slips)
            margin *= needed * friction2 / effectiveTension;
        return new BeltLoad(
            slack + effectiveTension, slack, arc2, arc1, margin, slips, Thrust(slack, effectiveTension, arc1));
    }

    /// <summary>The greatest D/F_s at which <see cref="BeltLoad.SlipMargin"/> is this one or more; +∞ for a margin of 0 or less.</summary>
    /// <param name="margin">s, least wrap over active arc.</param>
    /// <remarks>
    /// At the margin ln(T₁′/T₂′) = min(μ_e1 θ₁, μ_e2 θ₂)/s =: λ, so that T₂′ = D/(e^λ − 1) and
    /// F_s/D = [(θ₂ − λ/μ_e2)/(e^λ − 1) + 1/μ_e2]/(2 tan β). Beyond λ = μ_e2 θ₂ the belt slips on the driven sheave, where
    /// the margin goes down with F_s/D. Source: the equations of <see cref="BeltThrust"/>, solved for the load.
    /// </remarks>
    public double LoadAtSlipMargin(double margin)
    {
        if (!(margin > 0))
            return double.PositiveInfinity;
        double log = Math.Min(friction1 * wrap1, friction2 * wrap2) / margin;
        double whole = friction2 * wrap2;
        return log > whole
            ? twiceTan * friction2 * (log / whole)
            : twiceTan / ((wrap2 - log / friction2) / (Math.Exp(log) - 1) + 1 / friction2);
    }

    /// <summary>The thrust (N) below which the drive sheave slips on its whole wrap: D/(2 μ_e1 tan β).</summary>
    /// <param name="effectiveTension">D = Q/R₁ (N), 0 or more.</param>
    public double SlipEdge(double effectiveTension) => effectiveTension / (friction1 * twiceTan);

    /// <summary>F_d alone (N): the inner loop of the balance.</summary>
    /// <param name="drivenClamp">F_s (N); below 0 counts as 0.</param>
    /// <param name="effectiveTension">D = Q/R₁ (N), 0 or more.</param>
    public double DriveThrust(double drivenClamp, double effectiveTension) =>
        DriveThrust(drivenClamp, effectiveTension, cut: true);

    /// <summary>D/(2 tan β F_s μ_e2): at 1 the belt begins to slip on the driven sheave.</summary>
    internal double Loading(double drivenClamp, double effectiveTension) =>
        effectiveTension / (twiceTan * drivenClamp) / friction2;

    /// <summary>F_d (N) where the clamp is 1 N, at a loading up to 1, the active arc not cut off at the drive wrap.</summary>
    internal double UncutThrustPerClamp(double loading) => DriveThrust(1, twiceTan * friction2 * loading, cut: false);

    private double DriveThrust(double drivenClamp, double effectiveTension, bool cut)
    {
        (double slack, double log) = SlackAndLog(Needed(drivenClamp), effectiveTension);
        return Thrust(slack, effectiveTension, log / friction1, cut);
    }

    // A sheave pushes on the belt and never pulls: a clamp below 0 holds as much as none.
    private double Needed(double drivenClamp) => twiceTan * Math.Max(0, drivenClamp);

    private double Thrust(double slack, double effectiveTension, double arc, bool cut = true)
    {
        double tight = slack + effectiveTension;
        double idle = cut ? Math.Max(0, wrap1 - arc) : wrap1 - arc;
        return form == DriveThrustForm.Locked
            ? tight * wrap1 / twiceTan
            : (tight * idle + effectiveTension / friction1) / twiceTan;
    }

    private (double Slack, double Log) SlackAndLog(double needed, double effectiveTension)
    {
        // Without torque the tension is the same all round: no active arc, and no logarithm of 0/0.
        if (effectiveTension <= 0)
            return (needed / wrap2, 0);
        double slack = needed * friction2 < effectiveTension
            ? effectiveTension * slackAtSlip
            : SlackTension(needed, effectiveTension);
        return (slack, Math.Log(1 + effectiveTension / slack));
    }

    // T₂′ of the driven sheave: g(T) = T(θ₂ − θ_a2(T)) + D/μ_e2 rises and is convex beyond the slip tension, and at
    // T = needed/θ₂ it is at or above what is needed. Newton from there comes down without passing the root.
    private double SlackTension(double needed, double effectiveTension)
    {
        double slack = needed / wrap2;
        for (int step = 0; step < MaxSteps; step++)
        {
            double log = Math.Log(1 + effectiveTension / slack);
            double excess = slack * wrap2 - (slack * log - effectiveTension) / friction2 - needed;
            double slope = wrap2 - (log - effectiveTension / (slack + effectiveTension)) / friction2;
            double change = excess / slope;
            slack -= change;
            if (change <= 1e-14 * (slack + effectiveTension))
                break;
        }

        return slack;
    }
}
