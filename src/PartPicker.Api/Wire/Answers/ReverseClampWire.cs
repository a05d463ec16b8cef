namespace PartPicker.Api.Wire;

/// <summary>The cam in low gear, driving and under reverse power; springs and cam friction left out.</summary>
internal sealed record ReverseClampWire
{
    /// <summary>Angle of the flanks that bear under reverse power.</summary>
    public required QuantityWire Angle { get; init; }

    /// <summary>Clamp per torque under reverse power over that when driving.</summary>
    public required double ClampRatio { get; init; }

    /// <summary>Cam force of the torque at the low-gear upshift; null where it does not shift there.</summary>
    public required QuantityWire? DrivingClamp { get; init; }

    /// <summary>Cam force of the same torque under reverse power.</summary>
    public required QuantityWire? Clamp { get; init; }
}
