namespace PartPicker.Api.Wire;

/// <summary>The process answers.</summary>
internal sealed record LiveWire
{
    /// <summary>Always "live".</summary>
    public required string Status { get; init; }
}
