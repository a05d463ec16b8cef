using UnitsNet;

namespace PartPicker.Parts;

/// <summary>A drive belt.</summary>
public sealed record Belt : Part
{
    public override ItemKind Kind => ItemKind.Belt;

    /// <summary>L: pitch length.</summary>
    public Length PitchLength { get; init; }

    /// <summary>m_b: mass per length.</summary>
    public LinearDensity MassPerLength { get; init; }

    /// <summary>μ: friction of belt on sheave.</summary>
    public double Friction { get; init; }

    /// <summary>
    /// μ over pitch radius (m), by rising radius, where it was measured; it takes the place of <see cref="Friction"/>.
    /// </summary>
    public IReadOnlyList<CurvePoint>? FrictionByRadius { get; init; }

    /// <summary>η: efficiency of the belt drive.</summary>
    public double Efficiency { get; init; }

    /// <summary>Width across the top when new.</summary>
    public Length? TopWidth { get; init; }

    /// <summary>Width across the top below which it is worn out.</summary>
    public Length? WearLimit { get; init; }
}
