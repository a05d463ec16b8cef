using UnitsNet;

namespace PartPicker.Parts;

/// <summary>A set of equal flyweight arms: a body and the stations where masses may be added.</summary>
public sealed record Flyweight : Part
{
    public override ItemKind Kind => ItemKind.Flyweight;

    /// <summary>Mass of one arm without its station masses.</summary>
    public Mass BodyMass { get; init; }

    /// <summary>Radius of gyration about the shaft (m) over sheave travel (m), by rising travel.</summary>
    public IReadOnlyList<CurvePoint> RadiusCurve { get; init; } = [];

    /// <summary>Pin to tip, as the clutch needs it; null when the supplier does not say.</summary>
    public Length? ArmLength { get; init; }

    public IReadOnlyList<CurvePoint>? HeelCurve { get; init; }
    public IReadOnlyList<double>? HeelMasses { get; init; }
    public IReadOnlyList<CurvePoint>? MiddleCurve { get; init; }
    public IReadOnlyList<double>? MiddleMasses { get; init; }
    public IReadOnlyList<CurvePoint>? TipCurve { get; init; }
    public IReadOnlyList<double>? TipMasses { get; init; }

    /// <summary>The stations that this body has, from heel to tip.</summary>
    public IEnumerable<MassStation> Stations()
    {
        if (HeelCurve is not null && HeelMasses is not null)
            yield return new(StationName.Heel, HeelCurve, HeelMasses);
        if (MiddleCurve is not null && MiddleMasses is not null)
            yield return new(StationName.Middle, MiddleCurve, MiddleMasses);
        if (TipCurve is not null && TipMasses is not null)
            yield return new(StationName.Tip, TipCurve, TipMasses);
    }
}

/// <summary>A place on an arm that takes one of several masses.</summary>
/// <param name="Name">Where on the arm.</param>
/// <param name="RadiusCurve">Radius of gyration (m) over sheave travel (m).</param>
/// <param name="Masses">Masses (kg) that fit here; 0 stands for an empty station.</param>
public sealed record MassStation(
    StationName Name, IReadOnlyList<CurvePoint> RadiusCurve, IReadOnlyList<double> Masses);

public enum StationName
{
    Heel,
    Middle,
    Tip,
}
