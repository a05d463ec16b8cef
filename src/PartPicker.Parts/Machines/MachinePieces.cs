using UnitsNet;

namespace PartPicker.Parts;

/// <summary>An engine at full throttle, as its maker or a dynamometer states it at sea level.</summary>
public sealed record Engine : MachinePiece
{
    public override ItemKind Kind => ItemKind.Engine;

    /// <summary>Torque (N·m) over engine speed (rpm), by rising rpm.</summary>
    public IReadOnlyList<CurvePoint> TorqueCurve { get; init; } = [];

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

    /// <summary>Hub that the driven spring sits over.</summary>
    public Length? HubDiameter { get; init; }

    /// <summary>Preload twist in degrees by the name of the spring hole.</summary>
    public IReadOnlyList<SpringHole> Holes { get; init; } = [];
}

/// <summary>A spring hole as stamped, with the twist that it gives in low gear.</summary>
public sealed record SpringHole(string Name, double TwistDeg);

/// <summary>The belt that a machine runs.</summary>
public sealed record Belt : MachinePiece
{
    public override ItemKind Kind => ItemKind.Belt;

    /// <summary>L: pitch length.</summary>
    public Length PitchLength { get; init; }

    /// <summary>m_b: mass per length.</summary>
    public LinearDensity MassPerLength { get; init; }

    /// <summary>μ: friction of belt on sheave.</summary>
    public double Friction { get; init; }

    /// <summary>η: efficiency of the belt drive.</summary>
    public double Efficiency { get; init; }
}

/// <summary>What lies between the driven clutch and the ground; moves only the speed axis.</summary>
public sealed record Gearing : MachinePiece
{
    public override ItemKind Kind => ItemKind.Gearing;

    public Length TyreRadius { get; init; }

    /// <summary>Turns of the driven clutch per turn of the wheel.</summary>
    public double FinalDrive { get; init; }
}
