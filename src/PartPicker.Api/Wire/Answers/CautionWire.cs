namespace PartPicker.Api.Wire;

/// <summary>A warning that belongs beside every answer that leads to a wrench.</summary>
internal sealed record CautionWire
{
    /// <summary>WARNING, CAUTION or NOTICE, after ANSI Z535.4.</summary>
    public required string Signal { get; init; }

    /// <summary>What may happen, and what to do.</summary>
    public required string Sentence { get; init; }
}
