using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>By how much a rule is kept.</summary>
internal sealed record FitMarginWire
{
    /// <summary>Where the part goes.</summary>
    [WordsOf(typeof(Slot))]
    public required string Slot { get; init; }

    /// <summary>Its id, with the station masses or hole where they matter.</summary>
    public required string Part { get; init; }

    /// <summary>Stable name of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>What the part has.</summary>
    public required QuantityWire Measured { get; init; }

    /// <summary>What the machine allows.</summary>
    public required QuantityWire Limit { get; init; }

    /// <summary>The room between the two, never negative; null where they must be the same, which leaves no room.</summary>
    public required QuantityWire? Margin { get; init; }
}
