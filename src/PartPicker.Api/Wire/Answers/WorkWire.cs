namespace PartPicker.Api.Wire;

/// <summary>What the search did.</summary>
internal sealed record WorkWire
{
    /// <summary>Sets that fit; all of them are covered.</summary>
    public required long Combinations { get; init; }

    /// <summary>Sets whose shift curve was computed.</summary>
    public required long Predictions { get; init; }
}
