namespace PartPicker.Api.Wire;

/// <summary>A part in stock that does nearly the same, everything else left as picked.</summary>
internal sealed record AlternateWire
{
    /// <summary>The part's id.</summary>
    public required string Id { get; init; }

    /// <summary>The miss with it in place.</summary>
    public required double Miss { get; init; }

    /// <summary>True when no single error exceeds its tolerance with it in place.</summary>
    public required bool WithinTolerance { get; init; }
}
