using PartPicker.Mechanics;
using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>Springs as the model sees them: force over length and torque over twist, however they are known.</summary>
/// <remarks>Where a part is known in several ways, measurement goes before rating, rating before geometry.</remarks>
internal static class SpringModels
{
    // A line knows no end; these are beyond any clutch.
    private const double LeastLengthM = 1e-3;
    private const double GreatestTwistRad = 12 * Math.PI;

    /// <summary>Force over length; null when nothing whole is known.</summary>
    public static LinearCurve? Force(DriveSpring spring)
    {
        if (spring.LoadTable is { } table)
            return LinearCurve.Table(table.Select(p => (p.X, p.Y)));
        double solid = SolidLength(spring)?.Meters ?? LeastLengthM;
        if (spring.KnownByTwoLoads)
        {
            return TwoLoads(
                (spring.FirstLength!.Value.Meters, spring.FirstLoad!.Value.Newtons),
                (spring.SecondLength!.Value.Meters, spring.SecondLoad!.Value.Newtons),
                solid);
        }

        return Rate(spring) is { } rate && spring.FreeLength is { } free && free.Meters > solid
            ? LinearCurve.Line(free.Meters, 0, -rate.NewtonsPerMeter, solid, free.Meters)
            : null;
    }

    /// <summary>Stated rate, or the rate of the geometry.</summary>
    public static ForcePerLength? Rate(DriveSpring spring) => spring.Rate
        ?? (spring.KnownByGeometry && WireMaterial.Find(spring.Material!) is { } material
            ? HelicalSpring.Rate(
                material.ShearModulus(spring.WireDiameter!.Value),
                spring.WireDiameter.Value,
                Mean(spring.OutsideDiameter!.Value, spring.WireDiameter.Value),
                spring.ActiveCoils!.Value)
            : null);

    /// <summary>Stated solid length, or the one of the coils.</summary>
    public static Length? SolidLength(DriveSpring spring) => spring.SolidLength
        ?? (spring.WireDiameter is { } wire && spring.TotalCoils is { } coils && spring.Ends is { } ends
            ? HelicalSpring.SolidLength(wire, coils, ends is SpringEnds.OpenGround or SpringEnds.ClosedGround)
            : null);

    /// <summary>Clearance between coils that shall remain; null when the coils are not known.</summary>
    public static Length? CoilClearance(DriveSpring spring) =>
        spring.WireDiameter is { } wire && spring.OutsideDiameter is { } outside && spring.ActiveCoils is { } coils
            ? HelicalSpring.CoilClearance(wire, Mean(outside, wire), coils)
            : null;

    /// <summary>Axial force over length; null when nothing whole is known.</summary>
    public static LinearCurve? Axial(DrivenSpring spring)
    {
        if (spring.LoadTable is { } table)
            return LinearCurve.Table(table.Select(p => (p.X, p.Y)));
        if (spring.FreeLength is not { } free || free.Meters <= LeastLengthM)
            return null;
        double? rate = spring switch
        {
            { Load: { } load, LoadLength: { } length } when length < free => load.Newtons / (free - length).Meters,
            { Rate: { } stated } => stated.NewtonsPerMeter,
            { KnownByGeometry: true } when WireMaterial.Find(spring.Material!) is { } material => HelicalSpring.Rate(
                material.ShearModulus(spring.WireDiameter!.Value),
                spring.WireDiameter.Value,
                Mean(spring.OutsideDiameter!.Value, spring.WireDiameter.Value),
                spring.ActiveCoils!.Value).NewtonsPerMeter,
            _ => null,
        };
        return rate is { } k ? LinearCurve.Line(free.Meters, 0, -k, LeastLengthM, free.Meters) : null;
    }

    /// <summary>Torque over twist; null when nothing whole is known.</summary>
    public static LinearCurve? Twist(DrivenSpring spring)
    {
        if (spring.TorqueTable is { } table)
            return LinearCurve.Table(table.Select(p => (p.X, p.Y)));
        if (spring.KnownByTwoTorques && spring.FirstTwistDeg != spring.SecondTwistDeg)
        {
            return LinearCurve.Through(
                (Radians(spring.FirstTwistDeg!.Value), spring.FirstTorque!.Value.NewtonMeters),
                (Radians(spring.SecondTwistDeg!.Value), spring.SecondTorque!.Value.NewtonMeters),
                0,
                GreatestTwistRad);
        }

        double? rate = spring.TwistRate?.NewtonMetersPerRadian
            ?? (spring.KnownByGeometry && WireMaterial.Find(spring.Material!) is { } material
                ? TorsionSpring.TwistRate(
                    material.ElasticModulus(spring.WireDiameter!.Value),
                    spring.WireDiameter.Value,
                    Mean(spring.OutsideDiameter!.Value, spring.WireDiameter.Value),
                    spring.ActiveCoils!.Value).NewtonMetersPerRadian
                : null);
        return rate is { } kappa ? LinearCurve.Line(0, 0, kappa, 0, GreatestTwistRad) : null;
    }

    /// <summary>Mean coil diameter: outside diameter less one wire.</summary>
    public static Length Mean(Length outside, Length wire) => Length.FromMeters(outside.Meters - wire.Meters);

    private static LinearCurve? TwoLoads((double Length, double Force) a, (double Length, double Force) b, double solid)
    {
        if (a.Length == b.Length)
            return null;
        double slope = (b.Force - a.Force) / (b.Length - a.Length);
        double free = a.Length - a.Force / slope;
        return slope < 0 && free > solid ? LinearCurve.Through(a, b, solid, free) : null;
    }

    private static double Radians(double degrees) => degrees * (Math.PI / 180);
}
