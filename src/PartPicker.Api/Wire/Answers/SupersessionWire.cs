namespace PartPicker.Api.Wire;

/// <summary>A replaced part number that the request named, and the part that was used.</summary>
internal sealed record SupersessionWire
{
    /// <summary>Where the request named it.</summary>
    public required string Pointer { get; init; }

    /// <summary>The replaced number.</summary>
    public required string Sent { get; init; }

    /// <summary>The part that replaced it.</summary>
    public required string Used { get; init; }
}
