using PartPicker.Mechanics;
using PartPicker.Parts;
using UnitsNet;

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
        if (masses is null || limit is null || masses.Any(m => m <= limit.Value.Kilograms + MassStation.MassToleranceKg))
            return;
        item.Refuse($"{station}Masses", findings, new(
            FindingCodes.NotBelow,
            $"All masses lie above {station}MassLimit, which is {item.Written[$"{station}MassLimit"]}. "
            + "Add 0 g where the station may stay empty."));
    }

    /// <summary>
    /// A mass that does not move outward does not push: a curve must rise within the shortest travel of any clutch, or
    /// no clutch of the catalog can use it.
    /// </summary>
    public static void CheckCurves(DraftItem item, double shortestFullShift, Findings findings)
    {
        foreach (Field field in FieldRegistry.For(item.Item.Kind))
        {
            IEnumerable<IReadOnlyList<CurvePoint>> curves = field.Get(item.Item) switch
            {
                IReadOnlyList<CurvePoint> points => [points],
                IReadOnlyList<NamedCurve> steps => steps.Select(s => s.Points),
                _ => [],
            };
            if (curves.Select(c => WhereItStands(c, shortestFullShift)).FirstOrDefault(x => x is not null) is { } at)
                item.Refuse(field.Name, findings, new(FindingCodes.WrongTrend, Stands(at)));
        }
    }

    /// <summary>The sentence on a radius that does not grow at a travel.</summary>
    public static string Stands(double travel) =>
        $"The radius does not grow with travel at {Shown.Length(travel)}, and a mass that does not move outward does not push. "
        + "Check the points there; at an end, another point beside it shows how the curve goes on.";

    /// <summary>Travel (m) up to full shift at which a radius curve does not rise; null where it rises everywhere.</summary>
    public static double? WhereItStands(IReadOnlyList<CurvePoint> points, double fullShift)
    {
        var curve = new SmoothCurve(points.Select(p => (p.X, p.Y)));
        double to = Math.Min(curve.To, fullShift);
        double[] cuts = [.. curve.Knots.Where(x => x < to), to];
        for (int i = 1; i < cuts.Length; i++)
        {
            if (curve.LeastSlope(cuts[i - 1], cuts[i]) < FlyweightSet.LeastRadiusSlope)
                return curve.Slope(cuts[i]) < curve.Slope(cuts[i - 1]) ? cuts[i] : cuts[i - 1];
        }

        return null;
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
