namespace PartPicker.Api.Wire;

/// <summary>Mass in each station of one arm, from 0 g to 100 g; a station left out is empty.</summary>
internal sealed record StationMassesInputWire : IRequestWire
{
    /// <summary>At the heel, nearest the pin.</summary>
    public QuantityInputWire? Heel { get; init; }

    /// <summary>In the middle.</summary>
    public QuantityInputWire? Middle { get; init; }

    /// <summary>At the tip.</summary>
    public QuantityInputWire? Tip { get; init; }
}
