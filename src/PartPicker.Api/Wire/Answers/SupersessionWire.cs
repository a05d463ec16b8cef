namespace PartPicker.Api.Wire;

/// <summary>A replaced part number of which too little is known to compute it, and the part that was computed in its place.</summary>
internal sealed record SupersessionWire
{
    /// <summary>Where it was named.</summary>
    public required string Pointer { get; init; }

    /// <summary>The replaced number.</summary>
    public required string Sent { get; init; }

    /// <summary>The part that replaced it.</summary>
    public required string Used { get; init; }
}
