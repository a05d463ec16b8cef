namespace PartPicker.Mechanics;

/// <summary>Every span that a relation or a rule of the trade is good for.</summary>
public static class ValidRanges
{
    /// <summary>β, half of the groove angle (degrees).</summary>
    public static readonly ValidRange GrooveHalfAngle = new(
        "groove-half-angle", "half of the groove angle", 10, 20, "°",
        "A flatter groove holds the belt fast, a steeper one hardly wedges it.", "common practice, no source");

    /// <summary>α − φ on the upshift and α + φ on the backshift (degrees).</summary>
    public static readonly ValidRange HelixWithFriction = new(
        "helix-with-friction", "helix angle, less or with the friction angle of the cam", 0, 90, "°",
        "At or below nothing the cam locks itself; at a right angle it passes no torque on.", "power screws, [KG] ch. 10");

    /// <summary>What a standard lets engine torque be corrected by.</summary>
    public static readonly ValidRange AirCorrection = new(
        "air-correction", "correction factor of engine torque for the air", 0.93, 1.07, "",
        "Outside, the standards allow no correction of a test: at altitude it is a model.", "[ISO 1585], from memory");

    /// <summary>Altitude of the standard atmosphere (m).</summary>
    public static readonly ValidRange Altitude = new(
        "altitude", "geopotential altitude", double.NegativeInfinity, 11_000, "m",
        "Above the troposphere temperature falls no further; the service refuses it.", "[ISO 2533]");

    /// <summary>h, humidity of the air (percent).</summary>
    public static readonly ValidRange RelativeHumidity = new(
        "relative-humidity", "relative humidity", 0, 100, "%",
        "Above, the vapour is fog; the service refuses it.", "the definition of humidity");

    /// <summary>Air temperature that the pressure of saturated vapour is known for (°C).</summary>
    public static readonly ValidRange SaturationTemperature = new(
        "saturation-temperature", "temperature of moist air", -100, 100, "°C",
        "The law of the vapour pressure says nothing; the service refuses it sooner.", "[SON]");

    /// <summary>a_f and a_b.</summary>
    public static readonly ValidRange AnchorFactor = new(
        "anchor-factor", "factor by which a measured run ties the model", Anchor.LeastUsualFactor,
        Anchor.GreatestUsualFactor, "", "Something in the profile is wrong, and the factor only hides it.",
        "common practice, no source");

    /// <summary>Slip margin on the upshift.</summary>
    public static readonly ValidRange SlipMargin = new(
        "slip-margin", "smaller wrap over active arc", 1, double.PositiveInfinity, "",
        "Below, the belt slips at full throttle.", "the capstan equation");

    /// <summary>Every span; those of wire diameter are one for each wire of the strength table.</summary>
    public static IReadOnlyList<ValidRange> All { get; } =
    [
        HelicalSpring.IndexRange,
        .. WireMaterial.All.Select(m => m.DiameterRange),
        SpringTolerance.WireRange,
        SpringTolerance.DiameterRange,
        GrooveHalfAngle,
        HelixWithFriction,
        AirCorrection,
        Altitude,
        RelativeHumidity,
        SaturationTemperature,
        AnchorFactor,
        SlipMargin,
    ];
}
