using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Whether enough is known of a flyweight to weigh it.</summary>
internal static class FlyweightChecks
{
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
            item.RefuseWhole(findings, new(
                FindingCodes.NotKnown,
                "No way to know the flyweight is whole. Give bodyMass with radiusCurve, armProfile or "
                + "adjusterCurves; or referenceArm with massOverReference."));
        }

        foreach (MassStation station in body.Stations())
        {
            // Choices beyond the limit are passed over; a station without any would hide the whole body.
            if (station.MassLimit is { } limit && station.Masses.All(m => m > limit.Kilograms))
            {
                string name = ValueReader.Word($"{station.Name}");
                item.Refuse($"{name}Masses", findings, new(
                    FindingCodes.NotBelow,
                    $"All masses lie above {name}MassLimit, which is {item.Written[$"{name}MassLimit"]}. "
                    + "Add 0 g where the station may stay empty."));
            }
        }
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
