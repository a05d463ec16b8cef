using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>A rule that a part was not measured by.</summary>
internal sealed record FitGapWire
{
    /// <summary>Where the part goes.</summary>
    [WordsOf(typeof(Slot))]
    public required string Slot { get; init; }

    /// <summary>Its id.</summary>
    public required string Part { get; init; }

    /// <summary>Stable name of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>What the fit stands on instead: the supplier's list, or nothing known.</summary>
    [WordsOf(typeof(FitGround))]
    public required string Ground { get; init; }

    /// <summary>The value that is missing.</summary>
    public required string Missing { get; init; }
}
