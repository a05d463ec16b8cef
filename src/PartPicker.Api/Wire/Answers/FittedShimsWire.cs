namespace PartPicker.Api.Wire;

/// <summary>Equal shims under the drive spring.</summary>
internal sealed record FittedShimsWire
{
    /// <summary>The shim's id.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }

    /// <summary>How many of them.</summary>
    public required int Count { get; init; }
}
