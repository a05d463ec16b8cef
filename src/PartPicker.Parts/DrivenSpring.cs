using UnitsNet;

namespace PartPicker.Parts;

/// <summary>The spring of the driven clutch, compressed and twisted.</summary>
/// <remarks>
/// Twist may be known by geometry, by twist rate, by two torques at two twists or by a table; compression by
/// geometry, by rate, by one load at a length, or by a table. The most direct knowledge counts, in the order
/// table, loads, rate, geometry.
/// </remarks>
public sealed record DrivenSpring : Part
{
    public override ItemKind Kind => ItemKind.DrivenSpring;

    public Length? WireDiameter { get; init; }
    public Length? OutsideDiameter { get; init; }
    public double? ActiveCoils { get; init; }

    /// <summary>Body coils, for the winding-up of the diameter; active coils when not given.</summary>
    public double? BodyCoils { get; init; }

    public string? Material { get; init; }
    public Length? FreeLength { get; init; }

    /// <summary>Inside diameter at rest, where it is stated; otherwise outside diameter less two wires.</summary>
    public Length? InsideDiameter { get; init; }

    public ForcePerLength? Rate { get; init; }
    public Length? LoadLength { get; init; }
    public Force? Load { get; init; }
    public RotationalStiffness? TwistRate { get; init; }
    public double? FirstTwistDeg { get; init; }
    public Torque? FirstTorque { get; init; }
    public double? SecondTwistDeg { get; init; }
    public Torque? SecondTorque { get; init; }

    /// <summary>Twist that its legs add to every hole, in degrees.</summary>
    public double? LegOffsetDeg { get; init; }

    public WindingHand? WindingHand { get; init; }
    public SpringLegs? Legs { get; init; }

    /// <summary>Greatest twist that the supplier allows, in degrees.</summary>
    public double? TwistLimitDeg { get; init; }

    /// <summary>Grade of its tolerances by DIN 2194, 1 to 3.</summary>
    public int? ToleranceGrade { get; init; }

    /// <summary>Length of body and legs with all coils touching, at rest.</summary>
    public Length? SolidLength { get; init; }

    /// <summary>Measured axial force (N) over length (m), by rising length.</summary>
    public IReadOnlyList<CurvePoint>? LoadTable { get; init; }

    /// <summary>Measured torque (N·m) over twist (rad), by rising twist.</summary>
    public IReadOnlyList<CurvePoint>? TorqueTable { get; init; }

    /// <summary>True when wire, diameter, active coils and material are given.</summary>
    public bool KnownByGeometry => WireDiameter is not null && OutsideDiameter is not null
        && ActiveCoils is not null && Material is not null;

    public bool KnownByTwoTorques => FirstTwistDeg is not null && FirstTorque is not null
        && SecondTwistDeg is not null && SecondTorque is not null;

    /// <summary>True when the axial force can be told from what is given.</summary>
    public bool CompressionKnown => LoadTable is not null
        || (FreeLength is not null && ((Load is not null && LoadLength is not null) || Rate is not null || KnownByGeometry));

    /// <summary>True when the torque of twist can be told from what is given.</summary>
    public bool TwistKnown => TorqueTable is not null || KnownByTwoTorques || TwistRate is not null || KnownByGeometry;
}

/// <summary>How the ends of a driven spring take hold.</summary>
public enum SpringLegs
{
    Straight,
    Hooked,
    Tangs,
}
