namespace PartPicker.Api.Wire;

/// <summary>
/// A rule that leaves nothing, and what would be found without it. It shows how far the nearest parts are from
/// fitting; as they are they must not be installed.
/// </summary>
internal sealed record WaiverWire
{
    /// <summary>Stable name of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>How many parts or sets it refused.</summary>
    public required long Refused { get; init; }

    /// <summary>The closest sets if this rule alone were waived.</summary>
    public required IReadOnlyList<WaivedSetWire> Sets { get; init; }
}
