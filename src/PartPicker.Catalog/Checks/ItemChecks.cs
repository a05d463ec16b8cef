using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>What the values of one item say together.</summary>
internal static class ItemChecks
{
    public static void Check(DraftItem item, Findings findings)
    {
        // What is half given is neither known nor unknown: the rest waits until that is mended.
        if (HalfGiven.Check(item, findings))
            return;
        Orders.Check(item, findings);
        switch (item.Item)
        {
            case DriveSpring spring:
                SpringChecks.Check(item, spring, findings);
                break;
            case DrivenSpring spring:
                SpringChecks.Check(item, spring, findings);
                break;
            case Helix helix:
                CheckHelix(item, helix, findings);
                break;
            case Engine engine:
                CheckEngine(item, engine, findings);
                break;
        }
    }

    private static void CheckHelix(DraftItem item, Helix helix, Findings findings)
    {
        if (helix is { HelixDeg: null, AnglePoints: null })
        {
            item.RefuseWhole(findings, new(
                FindingCodes.NotKnown,
                "The angle of the helix is not known. Give helixDeg (with finishDeg and finishTravel where it has "
                + "two angles), or anglePoints."));
        }
        else if (helix is { HelixDeg: not null, AnglePoints: not null })
        {
            item.Refuse("anglePoints", findings, new(
                FindingCodes.EitherOr, "The angle is given twice. Give helixDeg or anglePoints, not both."));
        }
        else if (helix is { FinishDeg: not null, AnglePoints: not null })
        {
            item.Refuse("finishDeg", findings, new(
                FindingCodes.EitherOr, "A finish angle goes with helixDeg. Make it the last of anglePoints."));
        }
    }

    private static void CheckEngine(DraftItem item, Engine engine, Findings findings)
    {
        double last = engine.TorqueCurve[^1].X;
        if (engine.RevLimitRpm > last)
        {
            item.Refuse("revLimitRpm", findings, new(
                FindingCodes.NotBelow,
                $"The rev limit lies beyond the torque curve, which ends at {last} rpm. Torque is never "
                + "guessed: extend the curve, or state the limit that it reaches."));
        }
    }
}
