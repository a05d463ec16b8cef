namespace PartPicker.Api.Wire;

/// <summary>What one step of one input changes, all else and the tie to the measured run held.</summary>
internal sealed record SensitivityWire
{
    /// <summary>The input, in words; "hole 3" is the whole move to that hole or setting, the next one up or, in the last, down.</summary>
    public required string Parameter { get; init; }

    /// <summary>The step that the changes are per; the unit of a bare number is empty.</summary>
    public required QuantityWire Step { get; init; }

    /// <summary>Change of the engagement rpm; null where another device starts the machine.</summary>
    public required double? EngagementRpm { get; init; }

    /// <summary>Change of the upshift rpm at each ratio of the curve; null where it does not shift.</summary>
    public required IReadOnlyList<double?> UpshiftRpm { get; init; }
}
