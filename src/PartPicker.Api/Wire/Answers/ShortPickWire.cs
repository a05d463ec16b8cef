using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>A choice within tolerance in short: what it is, what it does and what it takes.</summary>
internal sealed record ShortPickWire
{
    /// <summary>Its place in its own list.</summary>
    public required int Rank { get; init; }

    /// <summary>True where the search was ended before it was proven: another set may take this place.</summary>
    public required bool Provisional { get; init; }

    /// <summary>The parts.</summary>
    public required PartsWire Parts { get; init; }

    /// <summary>The slots that differ from what is fitted.</summary>
    [WordsOf(typeof(Slot))]
    public required IReadOnlyList<string> Changes { get; init; }

    /// <summary>Engine speed at which the belt takes hold; null where another device starts the machine, or the answer is relative.</summary>
    public required double? EngagementRpm { get; init; }

    /// <summary>Engine speed at full shift; null where it does not shift there, or the answer is relative.</summary>
    public required double? ShiftOutRpm { get; init; }

    /// <summary>What changes against what is fitted, where the answer is relative; null else.</summary>
    public required ChangeWire? Change { get; init; }

    /// <summary>Weighted root mean square of the errors, in tolerances.</summary>
    public required double Miss { get; init; }

    /// <summary>Price of what is not already fitted; null when a price is not known.</summary>
    public required PriceWire? Price { get; init; }

    /// <summary>What to buy for it, for the least money; empty without an outlet.</summary>
    public required IReadOnlyList<PurchaseWire> ToBuy { get; init; }

    /// <summary>
    /// Station masses that differ from what is fitted; another body starts with empty stations. They are no parts of the
    /// catalog: neither price, stock nor toBuy counts them.
    /// </summary>
    public required IReadOnlyList<MassToFitWire> MassesToFit { get; init; }

    /// <summary>Minutes of work at the outlet; null when a changed slot has none stated.</summary>
    public required int? LabourMinutes { get; init; }
}
