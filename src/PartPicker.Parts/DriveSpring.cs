using UnitsNet;

namespace PartPicker.Parts;

/// <summary>The compression spring of the drive clutch.</summary>
/// <remarks>
/// It may be known by geometry (wire, diameter, active coils, material, free length), by rating (rate and
/// free length, or two loads at two lengths) or by a measured table. Where several are given the most
/// direct knowledge counts: table, then two loads, then rate, then geometry.
/// </remarks>
public sealed record DriveSpring : Part
{
    public override ItemKind Kind => ItemKind.DriveSpring;

    public Length? WireDiameter { get; init; }
    public Length? OutsideDiameter { get; init; }
    public double? ActiveCoils { get; init; }
    public double? TotalCoils { get; init; }
    public SpringEnds? Ends { get; init; }
    public string? Material { get; init; }
    public Length? FreeLength { get; init; }
    public Length? SolidLength { get; init; }
    public ForcePerLength? Rate { get; init; }
    public Length? FirstLength { get; init; }
    public Force? FirstLoad { get; init; }
    public Length? SecondLength { get; init; }
    public Force? SecondLoad { get; init; }

    public WindingHand? WindingHand { get; init; }

    /// <summary>Whether the maker pressed it solid until it set no more.</summary>
    public YesNo? SetRemoved { get; init; }

    /// <summary>Grade of its tolerances by EN 15800, 1 to 3.</summary>
    public int? ToleranceGrade { get; init; }

    /// <summary>Measured force (N) over length (m), by rising length.</summary>
    public IReadOnlyList<CurvePoint>? LoadTable { get; init; }

    /// <summary>True when wire, diameter, active coils, material and free length are all given.</summary>
    public bool KnownByGeometry => WireDiameter is not null && OutsideDiameter is not null
        && ActiveCoils is not null && Material is not null && FreeLength is not null;

    /// <summary>True when rate and free length are given.</summary>
    public bool KnownByRate => Rate is not null && FreeLength is not null;

    /// <summary>True when two loads at two lengths are given.</summary>
    public bool KnownByTwoLoads => FirstLength is not null && FirstLoad is not null
        && SecondLength is not null && SecondLoad is not null;
}

/// <summary>How the ends of a compression spring are made.</summary>
public enum SpringEnds
{
    Open,
    OpenGround,
    Closed,
    ClosedGround,
}

/// <summary>A fact that holds or does not.</summary>
public enum YesNo
{
    No,
    Yes,
}

/// <summary>Which way a coil climbs.</summary>
public enum WindingHand
{
    Left,
    Right,
}
