using PartPicker.Mechanics;
using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>What of a set, its machine and its air lies outside the span that a relation is good for.</summary>
/// <remarks>Slip, anchor factors and self-lock have cautions and rules of their own.</remarks>
internal static class ValidityCautions
{
    // A maker's rating and the drawing of the same spring differ by this much before anybody miscounts a coil.
    private const double GreatestRateGap = 0.05;

    public static IEnumerable<Caution> For(SetUp set, Prediction prediction, MachineModel machine)
    {
        DriveSpring drive = set.DriveSpring;
        DrivenSpring driven = set.Driven.Spring;
        double? drivenOutside = driven.OutsideDiameter?.Meters
            ?? DrivenSpringRules.InsideAtRest(driven) + 2 * driven.WireDiameter?.Meters;
        return
        [
            .. Spring(drive.Id, drive.WireDiameter, drive.OutsideDiameter?.Meters, drive.Material),
            .. Spring(driven.Id, driven.WireDiameter, drivenOutside, driven.Material),
            .. Outside(
                "The drive clutch", ValidRanges.GrooveHalfAngle, machine.Profile.DriveClutch.SheaveHalfAngleDeg),
            .. Outside("The air of this answer", ValidRanges.AirCorrection, Correction(prediction.TorqueFactor)),
            .. RateGap(drive),
        ];
    }

    private static IEnumerable<Caution> Spring(string part, Length? wireDiameter, double? outside, string? material)
    {
        if (wireDiameter is not { } wire)
            yield break;
        if (outside is { } across)
        {
            foreach (Caution caution in Outside(part, HelicalSpring.IndexRange, (across - wire.Meters) / wire.Meters))
                yield return caution;
        }

        if (WireMaterial.Find(material ?? "") is { } known)
        {
            foreach (Caution caution in Outside(part, known.DiameterRange, wire.Millimeters))
                yield return caution;
        }
    }

    private static IEnumerable<Caution> Outside(string whose, ValidRange range, double value)
    {
        if (!range.Holds(value))
        {
            yield return new Caution(CautionWriter.Notice,
                $"{whose} has {value:0.##}{range.Unit} of {range.Quantity}, outside {range.Span}. {range.Why}");
        }
    }

    /// <summary>Where a spring has a rating and a geometry, by how much they differ.</summary>
    private static IEnumerable<Caution> RateGap(DriveSpring spring)
    {
        if (SpringModels.RatedRate(spring) is { } rated && SpringModels.DrawnRate(spring) is { } drawn
            && Math.Abs(drawn / rated - 1) > GreatestRateGap)
        {
            yield return new Caution(CautionWriter.Notice,
                $"The geometry of {spring.Id} gives {drawn / rated - 1:+0%;-0%} on its rated stiffness, which was used. Count its "
                + "coils again first: a gap of 10 to 15 % is mostly a miscounted coil.");
        }
    }

    // Both laws give this air the same within 0.1 %, by their reference air.
    private static double Correction(double torqueFactor) =>
        Atmosphere.Correction(
            AirCorrection.SaeJ1349, Atmosphere.PressureAt(Length.Zero), Atmosphere.StandardTemperature(Length.Zero)) / torqueFactor;
}
