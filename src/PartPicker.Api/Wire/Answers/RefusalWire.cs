using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>A part that does not fit, with the rule that says so.</summary>
internal sealed record RefusalWire
{
    /// <summary>Where the part would go.</summary>
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

    /// <summary>The same for a person.</summary>
    public required string Sentence { get; init; }
}
