namespace PartPicker.Api.Wire;

/// <summary>What is left between model and measurement at one ratio.</summary>
internal sealed record ResidualWire
{
    /// <summary>Where it was measured.</summary>
    public required double Ratio { get; init; }

    /// <summary>Model less measured engine speed.</summary>
    public required double Rpm { get; init; }
}
