using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Whether enough is known of a spring to compute with, and whether it can be true.</summary>
internal static class SpringChecks
{
    public static void Check(DraftItem item, DriveSpring spring, Findings findings)
    {
        CheckMaterial(item, spring.Material, findings);
        if (spring is { KnownByGeometry: false, KnownByRate: false, KnownByTwoLoads: false, LoadTable: null })
        {
            item.RefuseUnknown(
                findings,
                "No way to know the spring is whole. Give rate and freeLength; or two loads at two lengths; or "
                + "loadTable; or wireDiameter, outsideDiameter, activeCoils, material and freeLength.");
        }

        if (spring.KnownByTwoLoads && !Falls(
            (spring.FirstLength!.Value.Meters, spring.FirstLoad!.Value.Newtons),
            (spring.SecondLength!.Value.Meters, spring.SecondLoad!.Value.Newtons)))
        {
            item.Refuse("secondLoad", findings, new(
                FindingCodes.WrongTrend,
                "The two loads must be at two different lengths, and the shorter spring must carry more."));
        }

        CheckLoadTable(item, spring.LoadTable, findings);
    }

    /// <remarks>A spring of unknown twist is sound: it goes into clutches that only compress their spring.</remarks>
    public static void Check(DraftItem item, DrivenSpring spring, Findings findings)
    {
        CheckMaterial(item, spring.Material, findings);
        if (!spring.CompressionKnown)
        {
            item.RefuseUnknown(
                findings,
                "The axial force is not known. Give freeLength with rate, or with load and loadLength, or with "
                + "wireDiameter, outsideDiameter, activeCoils and material; or give loadTable.");
        }

        // Torque rises with twist as load falls with length.
        if (spring.KnownByTwoTorques && !Falls(
            (-spring.FirstTwistDeg!.Value, spring.FirstTorque!.Value.NewtonMeters),
            (-spring.SecondTwistDeg!.Value, spring.SecondTorque!.Value.NewtonMeters)))
        {
            item.Refuse("secondTorque", findings, new(
                FindingCodes.WrongTrend,
                "The two torques must be at two different twists, and the greater twist must have more."));
        }

        CheckLoadTable(item, spring.LoadTable, findings);
        if (spring.TorqueTable is { } table && table.Zip(table.Skip(1)).Any(p => p.Second.Y < p.First.Y))
        {
            item.Refuse("torqueTable", findings, new(
                FindingCodes.WrongTrend, "The torque falls somewhere with rising twist. Check the points."));
        }
    }

    private static void CheckMaterial(DraftItem item, string? material, Findings findings)
    {
        if (material is not null && WireMaterial.Find(material) is null)
        {
            item.Refuse("material", findings, new(
                FindingCodes.UnknownMaterial,
                "The wire table has no such key. "
                + $"It has {string.Join(", ", WireMaterial.All.Select(m => m.Key))}."));
        }
    }

    private static void CheckLoadTable(DraftItem item, IReadOnlyList<CurvePoint>? table, Findings findings)
    {
        if (table is not null && table.Zip(table.Skip(1)).Any(p => p.Second.Y > p.First.Y))
        {
            item.Refuse("loadTable", findings, new(
                FindingCodes.WrongTrend, "The load rises somewhere with rising length. Check the points."));
        }
    }

    private static bool Falls((double X, double Y) one, (double X, double Y) other) =>
        (one.X - other.X) * (one.Y - other.Y) < 0;
}
