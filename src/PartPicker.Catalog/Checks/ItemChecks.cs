using PartPicker.Mechanics;
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
            case Flyweight body:
                FlyweightChecks.Check(item, body, findings);
                break;
            case Helix helix:
                CheckHelix(item, helix, findings);
                break;
            case Engine engine:
                CheckEngine(item, engine, findings);
                break;
            case DrivenClutch clutch:
                CheckDrivenClutch(item, clutch, findings);
                break;
        }
    }

    private static void CheckHelix(DraftItem item, Helix helix, Findings findings)
    {
        if (helix is { HelixDeg: null, AnglePoints: null })
        {
            item.RefuseUnknown(
                findings,
                "The angle of the helix is not known. Give helixDeg (with finishDeg and finishTravel where it has "
                + "two angles), or anglePoints.");
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
        bool curve = engine.TorqueCurve.Count > 0;
        bool peaks = engine.PeakTorqueRpm is not null;
        if (curve && peaks)
        {
            item.Refuse("peakTorqueRpm", findings, new(
                FindingCodes.EitherOr, "The torque is given twice. Give torqueCurve or the two peaks, not both."));
        }
        else if (curve)
        {
            CheckCurve(item, engine, findings);
        }
        else if (peaks)
        {
            CheckPeaks(item, engine, findings);
        }
        else
        {
            item.RefuseUnknown(
                findings,
                "The torque of the engine is not known. Give torqueCurve; or peakTorqueRpm, peakTorque, peakPowerRpm and "
                + "peakPower, as a brochure prints them.");
        }
    }

    private static void CheckCurve(DraftItem item, Engine engine, Findings findings)
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

    private static void CheckPeaks(DraftItem item, Engine engine, Findings findings)
    {
        try
        {
            var peaks = new TwoPeaks(
                engine.PeakTorqueRpm!.Value, engine.PeakTorque!.Value.NewtonMeters, engine.PeakPowerRpm!.Value,
                (double)engine.PeakPower!.Value.Watts);
            if (engine.RevLimitRpm > peaks.LastRpm)
            {
                item.Refuse("revLimitRpm", findings, new(
                    FindingCodes.NotBelow,
                    $"The rev limit lies beyond {peaks.LastRpm} rpm, twice that of the greatest power: two peaks say "
                    + "nothing of such speeds. Check it, or give torqueCurve."));
            }
        }
        catch (ArgumentException impossible)
        {
            item.Refuse("peakPower", findings, new(
                FindingCodes.WrongTrend,
                $"{impossible.Message} Check the four numbers and their units, or give torqueCurve."));
        }
    }

    private static void CheckDrivenClutch(DraftItem item, DrivenClutch clutch, Findings findings)
    {
        bool holes = clutch.Holes.Count > 0;
        bool adjuster = clutch.AdjusterFromDeg is not null;
        if (clutch.Family == DrivenFamily.CompressionOnly)
        {
            if (holes || adjuster)
            {
                item.Refuse(holes ? "holes" : "adjusterFromDeg", findings, new(
                    FindingCodes.EitherOr,
                    "A clutch of the family compressionOnly twists no spring. Leave holes and adjuster out."));
            }
        }
        else if (holes && adjuster)
        {
            item.Refuse("adjusterFromDeg", findings, new(
                FindingCodes.EitherOr, "The twist is given twice. Give holes or an adjuster, not both."));
        }
        else if (!holes && !adjuster)
        {
            item.RefuseUnknown(
                findings,
                "The twist of the spring is not known. Give holes; or adjusterFromDeg, adjusterToDeg and "
                + "adjusterStepDeg; or the family compressionOnly.");
        }

        // An adjuster whose ends are exchanged is refused for that.
        if (clutch.AdjusterFromDeg < clutch.AdjusterToDeg && clutch.TwistChoices().Count > Field.MaxPoints)
        {
            item.Refuse("adjusterStepDeg", findings, new(
                FindingCodes.TooManyPoints,
                $"The adjuster has {clutch.TwistChoices().Count} settings; at most {Field.MaxPoints} are taken. "
                + "Widen the step."));
        }
    }
}
