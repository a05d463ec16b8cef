using UnitsNet;

namespace PartPicker.Parts;

/// <summary>A set of equal flyweight arms: a body and the stations where masses may be added.</summary>
public sealed record Flyweight : Part
{
    public override ItemKind Kind => ItemKind.Flyweight;

    /// <summary>Mass of one arm or roller without its station masses.</summary>
    public Mass BodyMass { get; init; }

    /// <summary>
    /// Radius of gyration about the shaft (m) over sheave travel (m), by rising travel. Own, or the arm profile's;
    /// empty for an arm known only against a reference arm, and for one whose path is a ramp's.
    /// </summary>
    public IReadOnlyList<CurvePoint> RadiusCurve { get; init; } = [];

    /// <summary>Id of the arm profile that gives the curves which this body does not state itself.</summary>
    public string? ArmProfileId { get; init; }

    /// <summary>Id of the arm that this one is weighed against; such an arm has no absolute rpm.</summary>
    public string? ReferenceArmId { get; init; }

    /// <summary>Mass of one arm less that of the reference arm.</summary>
    public Mass? MassOverReference { get; init; }

    /// <summary>Paths of an adjustable ramp, by the step that its adjuster stands on.</summary>
    public IReadOnlyList<NamedCurve>? AdjusterCurves { get; init; }

    /// <summary>Masses (kg) of the pins that an adjustable ramp takes, on the path of the body.</summary>
    public IReadOnlyList<double>? PinMasses { get; init; }

    /// <summary>Pin to tip, as the clutch needs it; null when the supplier does not say.</summary>
    public Length? ArmLength { get; init; }

    /// <summary>Bore of the pin that the arm swings on.</summary>
    public Length? PinBore { get; init; }

    /// <summary>Outside diameter of a roller that slides in a ramp.</summary>
    public Length? RollerDiameter { get; init; }

    /// <summary>Farthest that any point of the arm comes from the shaft, over the whole travel.</summary>
    public Length? TipRadius { get; init; }

    /// <summary>Arms or rollers in a set.</summary>
    public int? SetCount { get; init; }

    public IReadOnlyList<CurvePoint>? HeelCurve { get; init; }
    public IReadOnlyList<double>? HeelMasses { get; init; }
    public MassHolding? HeelHolding { get; init; }
    public Mass? HeelMassLimit { get; init; }
    public Length? HeelLengthLimit { get; init; }
    public IReadOnlyList<CurvePoint>? MiddleCurve { get; init; }
    public IReadOnlyList<double>? MiddleMasses { get; init; }
    public MassHolding? MiddleHolding { get; init; }
    public Mass? MiddleMassLimit { get; init; }
    public Length? MiddleLengthLimit { get; init; }
    public IReadOnlyList<CurvePoint>? TipCurve { get; init; }
    public IReadOnlyList<double>? TipMasses { get; init; }
    public MassHolding? TipHolding { get; init; }
    public Mass? TipMassLimit { get; init; }
    public Length? TipLengthLimit { get; init; }

    /// <summary>This body with the curves that it does not state taken from its profile.</summary>
    public Flyweight With(ArmProfile profile) => this with
    {
        RadiusCurve = RadiusCurve.Count > 0 ? RadiusCurve : profile.RadiusCurve,
        HeelCurve = HeelCurve ?? profile.HeelCurve,
        MiddleCurve = MiddleCurve ?? profile.MiddleCurve,
        TipCurve = TipCurve ?? profile.TipCurve,
    };

    /// <summary>The stations that this body has, from heel to tip.</summary>
    public IEnumerable<MassStation> Stations()
    {
        if (PinMasses is not null)
            yield return new(StationName.Pin, [], PinMasses, MassHolding.Screw, null);
        if (HeelCurve is not null && HeelMasses is not null)
            yield return new(StationName.Heel, HeelCurve, HeelMasses, HeelHolding, HeelMassLimit);
        if (MiddleCurve is not null && MiddleMasses is not null)
            yield return new(StationName.Middle, MiddleCurve, MiddleMasses, MiddleHolding, MiddleMassLimit);
        if (TipCurve is not null && TipMasses is not null)
            yield return new(StationName.Tip, TipCurve, TipMasses, TipHolding, TipMassLimit);
    }
}

/// <summary>A place on an arm that takes one of several masses.</summary>
/// <param name="Name">Where on the arm.</param>
/// <param name="RadiusCurve">Radius of gyration (m) over sheave travel (m); empty where it is the body's own path.</param>
/// <param name="Masses">Masses (kg) that fit here; 0 stands for an empty station.</param>
/// <param name="Holding">How a mass is held; null when the supplier does not say.</param>
/// <param name="MassLimit">Most that the station may carry; null when the supplier does not say.</param>
public sealed record MassStation(
    StationName Name, IReadOnlyList<CurvePoint> RadiusCurve, IReadOnlyList<double> Masses,
    MassHolding? Holding, Mass? MassLimit)
{
    /// <summary>A mass written in grams and one written in grains or ounces shall name the same weight.</summary>
    public const double MassToleranceKg = 1e-6;

    /// <summary>The listed mass, or 0 for an empty station, that a mass (kg) names; null where it names none.</summary>
    public double? Takes(double mass)
    {
        double nearest = Masses.Append(0).MinBy(m => Math.Abs(m - mass));
        return Math.Abs(nearest - mass) <= MassToleranceKg ? nearest : null;
    }

    /// <summary>True where the station may carry a mass (kg).</summary>
    public bool Carries(double mass) => MassLimit is not { } limit || mass <= limit.Kilograms + MassToleranceKg;
}

/// <summary>How a mass is held in its station.</summary>
public enum MassHolding
{
    Screw,

    /// <summary>Taking it out destroys it.</summary>
    Rivet,
    Magnet,
}

/// <summary>A curve with the step that it belongs to.</summary>
public sealed record NamedCurve(string Name, IReadOnlyList<CurvePoint> Points);

/// <summary>The path that arms of one make share: a body of grams alone is known by it.</summary>
public sealed record ArmProfile : MachinePiece
{
    public override ItemKind Kind => ItemKind.ArmProfile;

    public IReadOnlyList<CurvePoint> RadiusCurve { get; init; } = [];
    public IReadOnlyList<CurvePoint>? HeelCurve { get; init; }
    public IReadOnlyList<CurvePoint>? MiddleCurve { get; init; }
    public IReadOnlyList<CurvePoint>? TipCurve { get; init; }
}

public enum StationName
{
    /// <summary>The pin of a roller on a ramp: it runs on the body's own path.</summary>
    Pin,
    Heel,
    Middle,
    Tip,
}
