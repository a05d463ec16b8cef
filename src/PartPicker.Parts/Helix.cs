using UnitsNet;

namespace PartPicker.Parts;

/// <summary>The torque cam of the driven clutch.</summary>
/// <remarks>
/// Straight: <see cref="HelixDeg"/> alone. Two-angle: start, finish and the travel at which the finish
/// angle is reached. Otherwise a list of points.
/// </remarks>
public sealed record Helix : Part
{
    public override ItemKind Kind => ItemKind.Helix;

    /// <summary>Angle from the plane of rotation, at low gear when there is a second one.</summary>
    public double? HelixDeg { get; init; }

    public double? FinishDeg { get; init; }
    public Length? FinishTravel { get; init; }

    /// <summary>Helix angle (rad) over opening travel (m) of the driven sheave, by rising travel.</summary>
    public IReadOnlyList<CurvePoint>? AnglePoints { get; init; }

    /// <summary>Angle of the flanks that bear under reverse power, as on engine braking; null: not known.</summary>
    public double? ReverseDeg { get; init; }

    /// <summary>Radius of the cam track; null when the supplier does not say.</summary>
    public Length? CamRadius { get; init; }

    /// <summary>How it is fixed, in the word that its clutch uses.</summary>
    public string? Mount { get; init; }

    /// <summary>The angle as points, whichever way it was given; radians over metres.</summary>
    public IReadOnlyList<CurvePoint> Angles()
    {
        if (AnglePoints is not null)
            return AnglePoints;
        CurvePoint start = new(0, Radians(HelixDeg ?? 0));
        return FinishDeg is { } finish && FinishTravel is { } travel
            ? [start, new(travel.Meters, Radians(finish))]
            : [start];
    }

    private static double Radians(double degrees) => degrees * (Math.PI / 180);
}
