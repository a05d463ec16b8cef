namespace PartPicker.Api.Wire;

/// <summary>A replaced part number, the part that was computed for it, and the one that is sold today.</summary>
internal sealed record SupersessionWire
{
    /// <summary>Where it was named.</summary>
    public required string Pointer { get; init; }

    /// <summary>The replaced number.</summary>
    public required string Sent { get; init; }

    /// <summary>The part that was computed: the sent one, or where too little is known of it one that replaced it.</summary>
    public required string Used { get; init; }

    /// <summary>The part that replaced it last: what is sold in its place today.</summary>
    public required string Successor { get; init; }
}
