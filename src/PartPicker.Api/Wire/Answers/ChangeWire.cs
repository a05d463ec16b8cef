namespace PartPicker.Api.Wire;

/// <summary>
/// By how much a set differs from the fitted one. The bands are those of the difference: an error that both sets share, as
/// that of the belt's friction, cancels as far as it moves both alike.
/// </summary>
internal sealed record ChangeWire
{
    /// <summary>Change of the engine speed at which the belt takes hold; null where another device starts the machine.</summary>
    public required double? EngagementChangeRpm { get; init; }

    /// <summary>Half width of the band around that change: about 19 in 20 machines lie within. Null where there is none.</summary>
    public required double? EngagementChangeBandRpm { get; init; }

    /// <summary>From low gear to full shift.</summary>
    public required IReadOnlyList<ChangePointWire> Curve { get; init; }
}

/// <summary>The change at one ratio, at full throttle.</summary>
internal sealed record ChangePointWire
{
    /// <summary>Driven pitch radius over drive pitch radius.</summary>
    public required double Ratio { get; init; }

    /// <summary>Change of the engine speed at which it shifts up here; null where one of the two sets does not.</summary>
    public required double? UpshiftChangeRpm { get; init; }

    /// <summary>Half width of the band around that change: about 19 in 20 machines lie within. Null where there is none.</summary>
    public required double? UpshiftChangeBandRpm { get; init; }
}
