namespace PartPicker.Api.Wire;

/// <summary>A rule or a target that stands in the way.</summary>
internal sealed record ObstacleWire
{
    /// <summary>Stable name of the rule or the target.</summary>
    [ObstacleNames]
    public required string Rule { get; init; }

    /// <summary>How many parts or sets it refused; 0 for a target.</summary>
    public required long Count { get; init; }

    /// <summary>What stands in the way, and by how much.</summary>
    public required string Sentence { get; init; }
}
