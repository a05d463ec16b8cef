using PartPicker.Mechanics;
using UnitsNet;

namespace PartPicker.SampleCatalog;

/// <summary>A helical spring as its drawing has it; every rate is computed from the written sizes.</summary>
/// <param name="Coils">Coils that deflect.</param>
internal sealed record SpringDrawing(WireMaterial Material, Written Wire, Written Outside, double Coils)
{
    private const int Turns = 30;

    /// <summary>Axial rate, N/m.</summary>
    public double Rate => RateOf(Material, Wire, Outside) / Coils;

    /// <summary>Twist rate, N·m/rad.</summary>
    public double TwistRate => TorsionSpring.TwistRate(
        Material.ElasticModulus(Metres(Wire)), Metres(Wire), Mean(Wire, Outside), Coils).NewtonMetersPerRadian;

    /// <summary>The spring of a rate: a wire that can be bought, then as many coils as it needs.</summary>
    public static SpringDrawing For(
        double rate, WireMaterial material, UnitStyle style, Written outside, double coils)
    {
        Written wire = style.Wire(WireFor(rate, outside.Si, coils, material));
        return new(material, wire, outside, Math.Round(RateOf(material, wire, outside) / rate * 20) / 20);
    }

    private static double RateOf(WireMaterial material, Written wire, Written outside) => HelicalSpring.Rate(
        material.ShearModulus(Metres(wire)), Metres(wire), Mean(wire, outside), activeCoils: 1).NewtonsPerMeter;

    /// <summary>d⁴ = 8 D³ Nₐ k / G, by turns with D, which is smaller than the outside by one wire.</summary>
    private static double WireFor(double rate, double outside, double coils, WireMaterial material)
    {
        double wire = outside / 10;
        for (int i = 0; i < Turns; i++)
        {
            double shear = material.ShearModulus(Length.FromMeters(wire)).Pascals;
            wire = Math.Pow(8 * Math.Pow(outside - wire, 3) * coils * rate / shear, 0.25);
        }

        return wire;
    }

    private static Length Mean(Written wire, Written outside) => Length.FromMeters(outside.Si - wire.Si);

    private static Length Metres(Written length) => Length.FromMeters(length.Si);
}
