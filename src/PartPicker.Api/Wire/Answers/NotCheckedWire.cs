using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>A rule that could not be checked.</summary>
internal sealed record NotCheckedWire
{
    /// <summary>Where the part goes.</summary>
    [WordsOf(typeof(Slot))]
    public required string Slot { get; init; }

    /// <summary>Its id.</summary>
    public required string Part { get; init; }

    /// <summary>Stable name of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>What would have to be known.</summary>
    public required string Missing { get; init; }
}
