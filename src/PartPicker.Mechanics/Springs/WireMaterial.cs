using UnitsNet;

namespace PartPicker.Mechanics;

/// <summary>
/// Elastic constants of spring wire, by material and wire diameter.
/// </summary>
/// <remarks>
/// Source: [SHI] Table 10-5. Carbon wires soften slightly as they get thicker, so their rows are split at
/// 0.032, 0.063 and 0.125 in; the alloy and stainless rows hold for every diameter.
/// </remarks>
public sealed class WireMaterial
{
    private const double InchesToMetres = 0.0254;
    private const double Giga = 1e9;

    // The same wire in inches and in millimetres differs in its last digit; far below any wire tolerance.
    private const double LimitTolerance = 1e-9;

    private static readonly double[] BandLimitsM =
        [0.032 * InchesToMetres, 0.063 * InchesToMetres, 0.125 * InchesToMetres];

    private readonly double[] elasticGPa;
    private readonly double[] shearGPa;

    private WireMaterial(string key, string name, WireTreatment treatment, double[] elasticGPa, double[] shearGPa)
    {
        Key = key;
        Name = name;
        Treatment = treatment;
        DiameterRange = WireStrengthSet.Shigley.DiameterRange(key);
        this.elasticGPa = elasticGPa;
        this.shearGPa = shearGPa;
    }

    /// <summary>The wire table.</summary>
    public static IReadOnlyList<WireMaterial> All { get; } =
    [
        new("music-wire-a228", "Music wire, ASTM A228", WireTreatment.Drawn, [203.4, 200, 196.5, 193], [82.7, 81.7, 81.0, 80.0]),
        new("hard-drawn-a227", "Hard-drawn wire, ASTM A227", WireTreatment.Drawn, [198.6, 197.9, 197.2, 196.5], [80.7, 80.0, 79.3, 78.6]),
        new("oil-tempered-a229", "Oil-tempered wire, ASTM A229", WireTreatment.Tempered, [196.5], [77.2]),
        new("chrome-vanadium-a232", "Chrome-vanadium wire, ASTM A232", WireTreatment.Tempered, [203.4], [77.2]),
        new("chrome-silicon-a401", "Chrome-silicon wire, ASTM A401", WireTreatment.Tempered, [203.4], [77.2]),
        new("stainless-302-a313", "Stainless wire 302, ASTM A313", WireTreatment.Austenitic, [193], [69.0]),
    ];

    /// <summary>How a catalog names the material.</summary>
    public string Key { get; }

    /// <summary>Its name for a person, with the standard of the wire.</summary>
    public string Name { get; }

    /// <summary>What was done to it, which says how much of its strength it may bear.</summary>
    public WireTreatment Treatment { get; }

    /// <summary>Wire diameters (mm) over which its strength is known by <see cref="WireStrengthSet.Shigley"/>.</summary>
    public ValidRange DiameterRange { get; }

    /// <summary>The material of a key, or null when the table has none of that name.</summary>
    public static WireMaterial? Find(string key) => All.FirstOrDefault(m => m.Key == key);

    /// <summary>E, Young's modulus of wire of this diameter.</summary>
    public Pressure ElasticModulus(Length wireDiameter) =>
        Pressure.FromPascals(Band(elasticGPa, wireDiameter.Meters) * Giga);

    /// <summary>G, shear modulus of wire of this diameter.</summary>
    public Pressure ShearModulus(Length wireDiameter) =>
        Pressure.FromPascals(Band(shearGPa, wireDiameter.Meters) * Giga);

    private static double Band(double[] values, double diameterM) =>
        values.Length == 1 ? values[0] : values[BandLimitsM.Count(limit => diameterM > limit + LimitTolerance)];
}
