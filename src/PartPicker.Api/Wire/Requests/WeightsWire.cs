using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>How engagement and shift curve share the score; they sum to 1.</summary>
internal sealed record WeightsWire : IRequestWire
{
    /// <summary>Share of the engagement rpm.</summary>
    [Range(0.0, 1.0)]
    public required double Engagement { get; init; }

    /// <summary>Share of the shift curve.</summary>
    [Range(0.0, 1.0)]
    public required double Shift { get; init; }
}
