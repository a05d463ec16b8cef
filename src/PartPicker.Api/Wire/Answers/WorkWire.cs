namespace PartPicker.Api.Wire;

/// <summary>What the search did.</summary>
internal sealed record WorkWire
{
    /// <summary>Sets that fit.</summary>
    public required long Combinations { get; init; }

    /// <summary>True when the list is what trying every set gives; false when the work limit or the clock ended the search.</summary>
    public required bool Proven { get; init; }

    /// <summary>Where not proven: no set that was left misses by less, so what is listed below it is final; null where proven.</summary>
    public required double? MissLowerBound { get; init; }
}
