namespace PartPicker.Api.Wire;

/// <summary>One choice in every slot.</summary>
internal sealed record PartsWire
{
    /// <summary>The drive spring.</summary>
    public required NamedIdWire DriveSpring { get; init; }

    /// <summary>The flyweight, with what is in its stations.</summary>
    public required FlyweightChoiceWire Flyweight { get; init; }

    /// <summary>The driven spring.</summary>
    public required NamedIdWire DrivenSpring { get; init; }

    /// <summary>Name of the spring hole, as stamped.</summary>
    public required string Hole { get; init; }

    /// <summary>The helix.</summary>
    public required NamedIdWire Helix { get; init; }
}
