using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>A line of a bulk run.</summary>
internal sealed record BulkPickRequestWire : IRequestWire
{
    /// <summary>Repeated in every answer to this line.</summary>
    public BulkIdWire? Id { get; init; }

    /// <summary>The question, as the address for one takes it; what the axes set may be missing.</summary>
    public required PickRequestWire Request { get; init; }

    /// <summary>Asks for every point of a grid: each value of each axis with each of the others, the last axis fastest.</summary>
    [MinLength(1)]
    [MaxLength(RequestLimits.MaxAxes)]
    public IReadOnlyList<GridAxisWire>? Axes { get; init; }
}
