using PartPicker.Mechanics;
using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>Stress, buckling and growth of springs at full shift, where they are worst.</summary>
internal static class SpringStressRules
{
    /// <summary>Shear stress at full shift, against a share of the tensile strength that goes by set removal.</summary>
    /// <remarks>
    /// Set removal allows more, whatever the index: what holds without it holds with it too. Where it is not known, only
    /// the span between both stays open.
    /// </remarks>
    public static FitCheck DriveShear(DriveSpring spring, MachineModel machine)
    {
        if (spring.WireDiameter is not { } wire || spring.OutsideDiameter is not { } outside || spring.Material is null)
        {
            return FitCheck.NotChecked(
                ("wire diameter", spring.WireDiameter is not null),
                ("outside diameter", spring.OutsideDiameter is not null),
                ("material", spring.Material is not null));
        }

        if (Strength(spring.Material, wire) is not { } strength)
            return FitCheck.NotChecked(Unstated(spring.Material, wire));
        double shortest = machine.ShortestDriveSpring;
        if (SpringModels.Force(spring) is not { } curve || !curve.Covers(shortest, shortest))
            return FitCheck.NotChecked("its force at full shift");
        Force force = Force.FromNewtons(curve.At(shortest));
        Length mean = SpringModels.Mean(outside, wire);
        WireTreatment treatment = WireMaterial.Find(spring.Material)!.Treatment;
        if (spring.SetRemoved is { } known)
            return Check(known == YesNo.Yes);
        FitCheck unset = Check(setRemoved: false);
        FitCheck set = Check(setRemoved: true);
        return unset.Verdict == FitVerdict.Kept ? unset
            : set.Verdict == FitVerdict.Broken ? set
            : FitCheck.NotChecked("whether its set was removed (if not, it is stressed too high)");

        FitCheck Check(bool setRemoved)
        {
            double stress = SpringStress.Shear(force, wire, mean, PermissibleStress.FactorFor(setRemoved)).Pascals;
            double limit = PermissibleStress.ShearShare(treatment, setRemoved) * strength.Pascals;
            return FitCheck.AtMost(stress, limit, Pressure.Info, FitTolerance.StressPa,
                $"shear stress {Words.Stress(stress)} at full shift exceeds the {Words.Stress(limit)} that its wire may bear "
                + (setRemoved ? "with its set removed" : "with its set not removed"));
        }
    }

    /// <summary>Deflection at full shift against that at which the spring bows out, alone between its seats.</summary>
    public static FitCheck DriveBuckling(DriveSpring spring, MachineModel machine)
    {
        if (FreeLength(spring) is not { } free || spring.WireDiameter is not { } wire
            || spring.OutsideDiameter is not { } outside || WireMaterial.Find(spring.Material ?? "") is not { } material)
        {
            return FitCheck.NotChecked(
                ("free length", FreeLength(spring) is not null),
                ("wire diameter", spring.WireDiameter is not null),
                ("outside diameter", spring.OutsideDiameter is not null),
                ("material", WireMaterial.Find(spring.Material ?? "") is not null));
        }

        EndFixing fixing = SpringModels.Fixing(machine.Profile.DriveClutch.SpringFixing);
        if (SpringBuckling.CriticalDeflection(
            free, SpringModels.Mean(outside, wire), material.ElasticModulus(wire), material.ShearModulus(wire), fixing)
            is not { } critical)
        {
            return FitCheck.Holds;
        }

        double deflection = free.Meters - machine.ShortestDriveSpring;
        return FitCheck.AtMost(deflection, critical.Meters, Length.Info, FitTolerance.LengthM,
            $"full shift compresses it by {Words.Length(deflection)}; it bows out at {Words.Length(critical.Meters)}");
    }

    /// <summary>Outside diameter at full shift; null where the coils are not known.</summary>
    public static double? GrownOutside(DriveSpring spring, MachineModel machine)
    {
        if (spring.WireDiameter is not { } wire || spring.OutsideDiameter is not { } outside || FreeLength(spring) is not { } free
            || spring.ActiveCoils is not { } coils || spring.Ends is not { } ends)
        {
            return null;
        }

        CoilEnds kind = SpringModels.Ends(ends);
        Length freePitch = HelicalSpring.Pitch(free, wire, coils, kind);
        Length pitch = HelicalSpring.Pitch(Length.FromMeters(machine.ShortestDriveSpring), wire, coils, kind);

        // A spring that cannot be so short is for the rule of the solid length.
        return freePitch <= pitch || pitch < wire
            ? null
            : HelicalSpring.GrownOutsideDiameter(wire, SpringModels.Mean(outside, wire), freePitch, pitch).Meters;
    }

    /// <summary>Bending and shear together at full shift.</summary>
    public static FitCheck DrivenCombined(DrivenChoice choice, MachineModel machine, double fullTwist)
    {
        DrivenSpring spring = choice.Spring;
        double shortest = machine.ShortestDrivenSpring;
        if (Bending(choice, machine, fullTwist) is not { } bent)
            return FitCheck.NotChecked(() => Missing(choice, machine, fullTwist));
        if (SpringModels.Axial(spring) is not { } axial || !axial.Covers(shortest, shortest))
            return FitCheck.NotChecked("its force at full shift");
        Pressure shear = SpringStress.Shear(
            Force.FromNewtons(axial.At(shortest)), spring.WireDiameter!.Value, bent.Mean, ShearFactor.Bergstraesser);
        double combined = SpringStress.Combined(bent.Stress, shear).Pascals;
        return FitCheck.AtMost(combined, bent.Limit.Pascals, Pressure.Info, FitTolerance.StressPa,
            $"twist and push together stress its wire to {Words.Stress(combined)} at full shift; it may bear "
            + $"{Words.Stress(bent.Limit.Pascals)}");
    }

    /// <summary>Bending alone: what stands in for a twist limit that no supplier states.</summary>
    public static FitCheck DrivenBending(DrivenChoice choice, MachineModel machine, double fullTwist) =>
        Bending(choice, machine, fullTwist) is { } bent
            ? FitCheck.AtMost(bent.Stress.Pascals, bent.Limit.Pascals, Pressure.Info, FitTolerance.StressPa,
                $"full shift twists it to {Words.Degrees(fullTwist)}, a bending stress of {Words.Stress(bent.Stress.Pascals)}; its "
                + $"wire may bear {Words.Stress(bent.Limit.Pascals)}")
            : FitCheck.NotChecked(() => $"twist limit, or {Missing(choice, machine, fullTwist)}");

    private static (Pressure Stress, Pressure Limit, Length Mean)? Bending(
        DrivenChoice choice, MachineModel machine, double fullTwist)
    {
        DrivenSpring spring = choice.Spring;
        if (spring.WireDiameter is not { } wire || spring.Material is not { } material
            || DrivenSpringRules.InsideAtRest(spring) is not { } inside || Strength(material, wire) is not { } strength
            || SpringModels.Twist(choice, machine) is not { } twist || !twist.Covers(fullTwist, fullTwist))
        {
            return null;
        }

        Length mean = Length.FromMeters(inside + wire.Meters);
        Pressure stress = SpringStress.Bending(Torque.FromNewtonMeters(twist.At(fullTwist)), wire, mean);
        double share = PermissibleStress.BendingShare(WireMaterial.Find(material)!.Treatment);
        return (stress, Pressure.FromPascals(share * strength.Pascals), mean);
    }

    private static string Missing(DrivenChoice choice, MachineModel machine, double fullTwist)
    {
        DrivenSpring spring = choice.Spring;
        (string, bool)[] needed =
        [
            ("wire diameter", spring.WireDiameter is not null),
            ("coil diameter", spring.InsideDiameter is not null || spring.OutsideDiameter is not null),
            ("material", spring.Material is not null),
            ("torque at full shift", SpringModels.Twist(choice, machine) is { } twist && twist.Covers(fullTwist, fullTwist)),
        ];
        return spring is { Material: { } material, WireDiameter: { } wire } && Strength(material, wire) is null
            ? Words.Lacking(needed.Append((Unstated(material, wire), false)))
            : Words.Lacking(needed);
    }

    private static string Unstated(string material, Length wire) =>
        $"strength of {material} at {Words.Length(wire.Meters)} of wire, where its table does not reach";

    private static Pressure? Strength(string material, Length wire) => WireStrengthSet.Shigley.Tensile(material, wire);

    // The line through two loads says where the spring is free; a table need not reach there.
    private static Length? FreeLength(DriveSpring spring) => spring.FreeLength
        ?? (spring.KnownByTwoLoads && spring.LoadTable is null && SpringModels.Force(spring) is { } force
            ? Length.FromMeters(force.To)
            : null);
}
