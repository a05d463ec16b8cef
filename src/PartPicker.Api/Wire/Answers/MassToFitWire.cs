using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>A mass to put into a station of every arm.</summary>
internal sealed record MassToFitWire
{
    /// <summary>Where on the arm.</summary>
    [WordsOf(typeof(StationName))]
    public required string Station { get; init; }

    /// <summary>Mass in one arm; 0 where what is fitted comes out.</summary>
    public required QuantityWire Mass { get; init; }

    /// <summary>One for each arm.</summary>
    public required int Pieces { get; init; }
}
