using System.ComponentModel.DataAnnotations;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>By how many rpm an answer may miss and still count as a hit.</summary>
internal sealed record TolerancesWire : IRequestWire
{
    /// <summary>Of the engagement rpm; 100 when left out. Others are refused where another device than the belt starts the machine.</summary>
    [Range(Tolerances.Min, Tolerances.Max)]
    public double? EngagementRpm { get; init; }

    /// <summary>Of the rpm at each point of the shift curve; 100 when left out.</summary>
    [Range(Tolerances.Min, Tolerances.Max)]
    public double? ShiftRpm { get; init; }
}
