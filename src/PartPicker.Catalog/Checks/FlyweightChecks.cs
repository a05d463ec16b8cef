using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Catalog;

/// <summary>Whether enough is known of a flyweight to weigh it.</summary>
internal static class FlyweightChecks
{
    /// <summary>A mass written in grams and one written in ounces shall name the same weight.</summary>
    private const double MassPlayKg = 1e-6;

    public static void Check(DraftItem item, Flyweight body, Findings findings)
    {
        if (body.AdjusterCurves is not null && (body.RadiusCurve.Count > 0 || body.ArmProfileId is not null))
        {
            item.Refuse("adjusterCurves", findings, new(
                FindingCodes.EitherOr,
                "The path is given twice. Give adjusterCurves for a ramp, radiusCurve or armProfile for an arm."));
        }

        bool path = body.AdjusterCurves is not null || body.RadiusCurve.Count > 0 || body.ArmProfileId is not null;
        if (!(path && item.Written.ContainsKey("bodyMass")) && body.ReferenceArmId is null)
        {
            item.RefuseUnknown(
                findings,
                "No way to know the flyweight is whole. Give bodyMass with radiusCurve, armProfile or "
                + "adjusterCurves; or referenceArm with massOverReference.");
        }

        CheckLimit(item, "heel", body.HeelMasses, body.HeelMassLimit, findings);
        CheckLimit(item, "middle", body.MiddleMasses, body.MiddleMassLimit, findings);
        CheckLimit(item, "tip", body.TipMasses, body.TipMassLimit, findings);
    }

    // Masses beyond the limit are no choices; a station without any choice would hide the whole body.
    private static void CheckLimit(
        DraftItem item, string station, IReadOnlyList<double>? masses, Mass? limit, Findings findings)
    {
        if (masses is null || limit is null || masses.Any(m => m <= limit.Value.Kilograms + MassPlayKg))
            return;
        item.Refuse($"{station}Masses", findings, new(
            FindingCodes.NotBelow,
            $"All masses lie above {station}MassLimit, which is {item.Written[$"{station}MassLimit"]}. "
            + "Add 0 g where the station may stay empty."));
    }

    /// <summary>Masses without a curve of their own take that of the arm profile, where it has one.</summary>
    public static void CheckStations(DraftItem item, Flyweight body, ArmProfile profile, Findings findings)
    {
        foreach (Field curve in FieldRegistry.For(ItemKind.ArmProfile).Where(f => f.Shape == FieldShape.Curve))
        {
            string masses = curve.Name.Replace("Curve", "Masses");
            if (!item.Written.ContainsKey(masses) || item.Written.ContainsKey(curve.Name)
                || curve.Get(profile) is not null)
            {
                continue;
            }

            item.Refuse(curve.Name, findings, new(
                FindingCodes.HalfGiven,
                $"{masses} tells nothing without {curve.Name}, and the arm profile {profile.Id} has none. "
                + "Give the curve here or there."));
        }
    }
}
