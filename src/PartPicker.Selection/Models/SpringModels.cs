using PartPicker.Mechanics;
using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>Springs as the model sees them: force over length and torque over twist, however they are known.</summary>
/// <remarks>Where a part is known in several ways, measurement goes before rating, rating before geometry.</remarks>
internal static class SpringModels
{
    // A line of twist knows no end; this is beyond any cam.
    private const double GreatestTwistRad = 1e4;

    /// <summary>Force F (N) over length (m); null when nothing whole is known.</summary>
    /// <remarks>
    /// A table is valid from its first to its last length, a line from nothing to the free length: how short the
    /// spring may become is for the rule of the solid length to say.
    /// </remarks>
    public static LinearCurve? Force(DriveSpring spring)
    {
        if (spring.LoadTable is { } table)
            return LinearCurve.Table(table.Select(p => (p.X, p.Y)));
        if (spring.KnownByTwoLoads)
        {
            return TwoLoads(
                (spring.FirstLength!.Value.Meters, spring.FirstLoad!.Value.Newtons),
                (spring.SecondLength!.Value.Meters, spring.SecondLoad!.Value.Newtons));
        }

        return (spring.Rate ?? DrawnRate(spring)) is { } rate && spring.FreeLength is { } free
            ? FromFreeLength(free, rate.NewtonsPerMeter)
            : null;
    }

    /// <summary>Rate as its supplier rates it: of two loads, or as stated; null where neither is given.</summary>
    public static ForcePerLength? RatedRate(DriveSpring spring) => spring.KnownByTwoLoads
        ? (spring.FirstLoad!.Value - spring.SecondLoad!.Value) / (spring.SecondLength!.Value - spring.FirstLength!.Value)
        : spring.Rate;

    /// <summary>Rate of the geometry; null where it is not whole.</summary>
    public static ForcePerLength? DrawnRate(DriveSpring spring) =>
        spring.KnownByGeometry && WireMaterial.Find(spring.Material!) is { } material
            ? HelicalSpring.Rate(
                material.ShearModulus(spring.WireDiameter!.Value),
                spring.WireDiameter.Value,
                Mean(spring.OutsideDiameter!.Value, spring.WireDiameter.Value),
                spring.ActiveCoils!.Value)
            : null;

    /// <summary>The rate that the model computes with where none is stated: of two loads, or of the geometry; null of a table.</summary>
    public static ForcePerLength? ComputedRate(DriveSpring spring) =>
        spring.LoadTable is null ? RatedRate(spring) ?? DrawnRate(spring) : null;

    /// <summary>Stated solid length, or the one of the coils.</summary>
    public static Length? SolidLength(DriveSpring spring) => spring.SolidLength
        ?? (spring.WireDiameter is { } wire && spring.TotalCoils is { } coils && spring.Ends is { } ends
            ? HelicalSpring.SolidLength(wire, coils, Ends(ends).Ground)
            : null);

    /// <summary>The ends as the formulas see them.</summary>
    public static CoilEnds Ends(SpringEnds ends) => ends switch
    {
        SpringEnds.Open => CoilEnds.Open,
        SpringEnds.OpenGround => CoilEnds.OpenGround,
        SpringEnds.Closed => CoilEnds.Closed,
        SpringEnds.ClosedGround => CoilEnds.ClosedGround,
        _ => throw new ArgumentOutOfRangeException(nameof(ends), ends, "No such ends."),
    };

    /// <summary>How a clutch holds the ends of its drive spring, as the formulas see it.</summary>
    public static EndFixing Fixing(SpringFixing fixing) => fixing switch
    {
        SpringFixing.BothFixed => EndFixing.BothFixed,
        SpringFixing.FixedAndHinged => EndFixing.FixedAndHinged,
        SpringFixing.BothHinged => EndFixing.BothHinged,
        SpringFixing.FixedAndFree => EndFixing.FixedAndFree,
        _ => throw new ArgumentOutOfRangeException(nameof(fixing), fixing, "No such fixing."),
    };

    /// <summary>Clearance between coils that shall remain; null when the coils are not known.</summary>
    public static Length? CoilClearance(DriveSpring spring) =>
        spring.WireDiameter is { } wire && spring.OutsideDiameter is { } outside && spring.ActiveCoils is { } coils
            ? HelicalSpring.CoilClearance(wire, Mean(outside, wire), coils)
            : null;

    /// <summary>Axial force (N) over length (m); null when nothing whole is known.</summary>
    /// <remarks>Valid as <see cref="Force"/> is.</remarks>
    public static LinearCurve? Axial(DrivenSpring spring)
    {
        if (spring.LoadTable is { } table)
            return LinearCurve.Table(table.Select(p => (p.X, p.Y)));
        if (spring.FreeLength is not { } free)
            return null;
        return AxialRate(spring) is { } k ? FromFreeLength(free, k) : null;
    }

    /// <summary>Axial rate (N/m): from one load, as stated, or of the geometry; null when not known, and of a table.</summary>
    public static double? AxialRate(DrivenSpring spring) => spring switch
    {
        { Load: { } load, LoadLength: { } length, FreeLength: { } free } when length < free =>
            load.Newtons / (free - length).Meters,
        { Rate: { } stated } => stated.NewtonsPerMeter,
        { KnownByGeometry: true } when WireMaterial.Find(spring.Material!) is { } material => HelicalSpring.Rate(
            material.ShearModulus(spring.WireDiameter!.Value),
            spring.WireDiameter.Value,
            Mean(spring.OutsideDiameter!.Value, spring.WireDiameter.Value),
            spring.ActiveCoils!.Value).NewtonsPerMeter,
        _ => null,
    };

    /// <summary>Torque (N·m) over twist (rad); null when nothing whole is known. A line is valid from no twist on.</summary>
    public static LinearCurve? Twist(DrivenSpring spring)
    {
        if (spring.TorqueTable is { } table)
            return LinearCurve.Table(table.Select(p => (p.X, p.Y)));
        if (spring.KnownByTwoTorques)
        {
            return TwoTorques(
                (Radians(spring.FirstTwistDeg!.Value), spring.FirstTorque!.Value.NewtonMeters),
                (Radians(spring.SecondTwistDeg!.Value), spring.SecondTorque!.Value.NewtonMeters));
        }

        return TwistRate(spring) is { } kappa ? LinearCurve.Line(0, 0, kappa, 0, GreatestTwistRad) : null;
    }

    /// <summary>Torque over twist as a clutch uses it: none where the spring is only compressed.</summary>
    public static LinearCurve? Twist(DrivenChoice choice, MachineModel machine) =>
        machine.Profile.DrivenClutch.Family == DrivenFamily.CompressionOnly
            ? LinearCurve.Line(0, 0, 0, -GreatestTwistRad, GreatestTwistRad)
            : Twist(choice.Spring);

    /// <summary>Twist rate (N·m/rad): of two torques, as stated, or of the geometry; null when not known, and of a table.</summary>
    public static double? TwistRate(DrivenSpring spring) => spring switch
    {
        { KnownByTwoTorques: true } => (spring.SecondTorque!.Value.NewtonMeters - spring.FirstTorque!.Value.NewtonMeters)
            / Radians(spring.SecondTwistDeg!.Value - spring.FirstTwistDeg!.Value),
        { TwistRate: { } stated } => stated.NewtonMetersPerRadian,
        { KnownByGeometry: true } when WireMaterial.Find(spring.Material!) is { } material => TorsionSpring.TwistRate(
            material.ElasticModulus(spring.WireDiameter!.Value),
            spring.WireDiameter.Value,
            Mean(spring.OutsideDiameter!.Value, spring.WireDiameter.Value),
            spring.ActiveCoils!.Value).NewtonMetersPerRadian,
        _ => null,
    };

    /// <summary>Mean coil diameter: outside diameter less one wire.</summary>
    public static Length Mean(Length outside, Length wire) => Length.FromMeters(outside.Meters - wire.Meters);

    /// <summary>The curve, with an end that is short of what is needed by no more than the tolerance set there.</summary>
    /// <remarks>
    /// A part that is short by less than the tolerance fits, so the model must have an answer for it. Compared in
    /// the same form as the rules do, so that no rounding refuses here what a rule has kept.
    /// </remarks>
    public static LinearCurve Reaching(LinearCurve curve, double from, double to, double tolerance)
    {
        if (curve.Covers(from, to) || from - curve.From < -tolerance || curve.To - to < -tolerance)
            return curve;
        return Stretched(curve, from, to);
    }

    // By itself, since a search asks of every choice whether its curve reaches, and hardly any does not.
    private static LinearCurve Stretched(LinearCurve curve, double from, double to) => LinearCurve.Table(
    [
        (Math.Min(from, curve.From), curve.At(curve.From)),
        .. curve.Knots.Select(x => (x, curve.At(x))),
        (Math.Max(to, curve.To), curve.At(curve.To)),
    ]);

    private static LinearCurve? FromFreeLength(Length free, double rate) =>
        free.Meters > 0 ? LinearCurve.Line(free.Meters, 0, -rate, 0, free.Meters) : null;

    private static LinearCurve? TwoLoads((double Length, double Force) a, (double Length, double Force) b)
    {
        double rate = (a.Force - b.Force) / (b.Length - a.Length);
        return rate > 0 && a.Length != b.Length ? LinearCurve.Through(a, b, 0, a.Length + a.Force / rate) : null;
    }

    private static LinearCurve? TwoTorques((double Twist, double Torque) a, (double Twist, double Torque) b)
    {
        double rate = (b.Torque - a.Torque) / (b.Twist - a.Twist);
        return rate > 0 && a.Twist != b.Twist ? LinearCurve.Through(a, b, 0, GreatestTwistRad) : null;
    }

    private static double Radians(double degrees) => degrees * (Math.PI / 180);
}
