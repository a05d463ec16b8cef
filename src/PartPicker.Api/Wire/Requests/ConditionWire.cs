namespace PartPicker.Api.Wire;

/// <summary>An air in which the machine runs.</summary>
internal sealed record ConditionWire : IRequestWire
{
    /// <summary>Altitude of the place; sea level when left out. From -500 m to 6000 m.</summary>
    public QuantityInputWire? Altitude { get; init; }

    /// <summary>Temperature of the air; the standard one of that altitude when left out. From -60 °C to 60 °C.</summary>
    public QuantityInputWire? Temperature { get; init; }

    /// <summary>Relative humidity of the air at that temperature; dry air when left out. From 0 % to 100 %.</summary>
    public QuantityInputWire? RelativeHumidity { get; init; }
}
