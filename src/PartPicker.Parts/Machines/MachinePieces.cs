using UnitsNet;

namespace PartPicker.Parts;

/// <summary>An engine at full throttle, as its maker or a dynamometer states it at sea level.</summary>
public sealed record Engine : MachinePiece
{
    public override ItemKind Kind => ItemKind.Engine;

    /// <summary>Torque (N·m) over engine speed (rpm), by rising rpm; empty where only the two peaks are known.</summary>
    public IReadOnlyList<CurvePoint> TorqueCurve { get; init; } = [];

    /// <summary>n_T: rpm of the greatest torque, as a brochure prints it.</summary>
    public double? PeakTorqueRpm { get; init; }

    public Torque? PeakTorque { get; init; }

    /// <summary>n_P: rpm of the greatest power.</summary>
    public double? PeakPowerRpm { get; init; }

    public Power? PeakPower { get; init; }

    /// <summary>Altitude up to which boost makes up for thin air; null: no boost.</summary>
    public Length? BoostedTo { get; init; }

    public double RevLimitRpm { get; init; }
    public double IdleRpm { get; init; }
}

/// <summary>The drive clutch without the parts that are chosen.</summary>
public sealed record DriveClutch : MachinePiece
{
    public override ItemKind Kind => ItemKind.DriveClutch;

    /// <summary>Half of the groove angle.</summary>
    public double SheaveHalfAngleDeg { get; init; }

    /// <summary>x_c: travel of the moving sheave from rest to belt contact.</summary>
    public Length ContactTravel { get; init; }

    /// <summary>x_f: travel at full shift.</summary>
    public Length FullShiftTravel { get; init; }

    /// <summary>R₁min: pitch radius of the belt at contact.</summary>
    public Length ContactPitchRadius { get; init; }

    public int ArmCount { get; init; }

    /// <summary>l₁: length of the drive spring with the clutch at rest.</summary>
    public Length SpringLength { get; init; }

    /// <summary>f: share of flyweight thrust lost to friction.</summary>
    public double FlyweightFrictionShare { get; init; }

    public DriveThrustLaw ThrustLaw { get; init; }

    /// <summary>Bore around the drive spring.</summary>
    public Length? CupBore { get; init; }

    /// <summary>Post inside the drive spring.</summary>
    public Length? PostDiameter { get; init; }

    /// <summary>Pin-to-tip length of the arms that this clutch takes.</summary>
    public Length? ArmLength { get; init; }

    /// <summary>Pin that the arms swing on.</summary>
    public Length? PinDiameter { get; init; }

    /// <summary>Diameter of the rollers that slide in its ramps.</summary>
    public Length? RollerDiameter { get; init; }

    /// <summary>Distance from the shaft that no arm may pass.</summary>
    public Length? TipClearanceRadius { get; init; }

    /// <summary>What the drive spring's ends must be to sit.</summary>
    public SpringSeat? SpringSeat { get; init; }

    /// <summary>How both ends of the drive spring are held.</summary>
    public SpringFixing SpringFixing { get; init; }

    /// <summary>Most shims under the drive spring; none where nothing is said.</summary>
    public int? ShimLimit { get; init; }

    public DriveFamily Family { get; init; }

    public StartDevice StartDevice { get; init; }
}

/// <summary>How the flyweights of a drive clutch push.</summary>
public enum DriveFamily
{
    /// <summary>Arms swing out on rollers.</summary>
    ArmOnRoller,

    /// <summary>Rollers run up ramps that an adjuster tilts; the ramp, its pin's mass and the step are chosen.</summary>
    RollerOnAdjustableRamp,

    /// <summary>Loose rollers slide in fixed ramps.</summary>
    SlidingRoller,
}

/// <summary>What starts the machine moving.</summary>
public enum StartDevice
{
    /// <summary>The belt itself: the drive clutch closes on it.</summary>
    Belt,

    /// <summary>A separate centrifugal clutch; the belt is always tight.</summary>
    CentrifugalClutch,

    /// <summary>A tight belt that turns on a one-way hub.</summary>
    OneWayHub,
}

/// <summary>How both ends of a compression spring are held.</summary>
public enum SpringFixing
{
    /// <summary>Flat, parallel seats that are guided along the shaft.</summary>
    BothFixed,

    /// <summary>One seat may tilt.</summary>
    FixedAndHinged,

    /// <summary>Both seats may tilt.</summary>
    BothHinged,

    /// <summary>One seat may tilt and wander.</summary>
    FixedAndFree,
}

/// <summary>The seat of a drive spring.</summary>
public enum SpringSeat
{
    /// <summary>Flat: the ends must be ground.</summary>
    Flat,

    /// <summary>Follows the wire: the ends must not be ground.</summary>
    Stepped,
}

/// <summary>How the belt carries its tension around the drive sheave.</summary>
public enum DriveThrustLaw
{
    /// <summary>Idle arc at entry tension, then active arc (the default).</summary>
    TwoArc,

    /// <summary>Entry tension over the whole wrap.</summary>
    Locked,
}

/// <summary>The driven clutch without the parts that are chosen.</summary>
public sealed record DrivenClutch : MachinePiece
{
    public override ItemKind Kind => ItemKind.DrivenClutch;

    /// <summary>r_c: radius of the cam track.</summary>
    public Length CamRadius { get; init; }

    /// <summary>q: share of the belt torque that passes the cam.</summary>
    public double CamTorqueShare { get; init; }

    /// <summary>l₂: length of the driven spring in low gear.</summary>
    public Length SpringLength { get; init; }

    /// <summary>φ: friction angle of the cam.</summary>
    public double CamFrictionDeg { get; init; }

    /// <summary>Whether the twist of the driven spring stiffens its push, by (1 + θ/Nₐ)².</summary>
    public YesNo TwistStiffening { get; init; }

    /// <summary>Hub that the driven spring sits over.</summary>
    public Length? HubDiameter { get; init; }

    /// <summary>Preload twist in degrees by the name of the spring hole; empty where an adjuster sets it, or nothing does.</summary>
    public IReadOnlyList<SpringHole> Holes { get; init; } = [];

    /// <summary>Least twist of an adjuster, in degrees.</summary>
    public double? AdjusterFromDeg { get; init; }

    /// <summary>Greatest twist of an adjuster, in degrees.</summary>
    public double? AdjusterToDeg { get; init; }

    /// <summary>Degrees from one setting of an adjuster to the next.</summary>
    public double? AdjusterStepDeg { get; init; }

    public WindingHand? WindingHand { get; init; }

    /// <summary>The spring ends that its holes take.</summary>
    public SpringLegs? Legs { get; init; }

    /// <summary>How a helix is fixed to it, in a word.</summary>
    public string? HelixMount { get; init; }

    public DrivenFamily Family { get; init; }

    /// <summary>True where an adjuster, and no hole, twists the spring.</summary>
    public bool HasAdjuster => AdjusterFromDeg is not null && AdjusterToDeg is not null && AdjusterStepDeg is not null;

    /// <summary>
    /// Every choice of preload twist: the holes, or each setting of the adjuster, named by its degrees, or the one
    /// choice "none" where nothing twists the spring.
    /// </summary>
    public IReadOnlyList<SpringHole> TwistChoices()
    {
        if (Family == DrivenFamily.CompressionOnly)
            return [new SpringHole("none", 0)];
        if (AdjusterFromDeg is not { } from || AdjusterToDeg is not { } to || AdjusterStepDeg is not { } step)
            return Holes;

        // A range that is a whole number of steps ends on its last setting, whatever the rounding.
        int last = (int)Math.Floor((to - from) / step + 1e-9);
        return [.. Enumerable.Range(0, last + 1).Select(i => Setting(from + i * step))];
    }

    private static SpringHole Setting(double degrees) =>
        new(degrees.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture), degrees);
}

/// <summary>What closes a driven clutch.</summary>
public enum DrivenFamily
{
    /// <summary>A twisted spring and a helix.</summary>
    TorsionAndHelix,

    /// <summary>A spring that is only compressed, and a helix.</summary>
    CompressionOnly,
}

/// <summary>A spring hole, or a pair of holes, as stamped, with the twist that it gives in low gear.</summary>
/// <param name="Name">As stamped; a pair is "sheave-helix".</param>
/// <param name="TwistDeg">Twist in low gear, in degrees.</param>
public sealed record SpringHole(string Name, double TwistDeg)
{
    /// <summary>The hole of the sheave, where the clutch stamps a pair.</summary>
    public string? SheaveHole { get; init; }

    /// <summary>The hole of the helix, where the clutch stamps a pair.</summary>
    public string? HelixHole { get; init; }

    /// <summary>A pair of holes, named as the trade says it.</summary>
    public static SpringHole Pair(string sheaveHole, string helixHole, double twistDeg) =>
        new($"{sheaveHole}-{helixHole}", twistDeg) { SheaveHole = sheaveHole, HelixHole = helixHole };
}

/// <summary>What lies between the driven clutch and the ground; moves only the speed axis.</summary>
public sealed record Gearing : MachinePiece
{
    public override ItemKind Kind => ItemKind.Gearing;

    public Length TyreRadius { get; init; }

    /// <summary>Turns of the driven clutch per turn of the wheel.</summary>
    public double FinalDrive { get; init; }
}
