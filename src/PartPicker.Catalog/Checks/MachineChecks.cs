using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>What a machine says together with its pieces.</summary>
internal sealed class MachineChecks(CatalogDraft draft, PartSetChecks sets, DraftItem item)
{
    private readonly Machine machine = (Machine)item.Item;
    private readonly string pointer = item.Place.Pointer!;

    public void Check()
    {
        if (machine.Fitted is { } fitted)
            sets.Check(fitted, machine, item.Place.File, $"{pointer}/fitted");
        for (int i = 0; i < machine.Baselines.Count; i++)
            CheckRun(machine.Baselines[i], $"{pointer}/baselines/{i}");
        CheckBelt();
        CheckYears("fromYear", machine.FromYear);
        CheckYears("toYear", machine.ToYear);
    }

    private void CheckRun(Baseline run, string place)
    {
        // A run without parts of its own has the fitted set, which is judged where it stands.
        if (!ReferenceEquals(run.Parts, machine.Fitted))
            sets.Check(run.Parts, machine, item.Place.File, $"{place}/parts");
        // A run without any shift rpm was refused where it was read.
        if (run.EngagementRpm is null && (run.FlatShiftRpm is not null || run.Shift.Count > 0)
            && draft.Sound<DriveClutch>(machine.DriveClutchId) is { StartDevice: StartDevice.Belt })
        {
            draft.Findings.Add(
                item.Place.File, null, JsonSource.Below(place, BaselineReader.EngagementRpm), null, new(
                    FindingCodes.MissingValue,
                    "Give the engine speed at which the belt took hold. It may be left out only where the drive "
                    + "clutch has another startDevice than belt."));
        }
    }

    private void CheckBelt()
    {
        // A distance that was refused itself is not judged again.
        if (!item.Sound || draft.Sound<DriveClutch>(machine.DriveClutchId) is not { } drive || draft.Sound<Belt>(machine.BeltId) is not { } belt)
            return;
        double between = machine.CentreDistance.Meters;
        foreach ((double radius, double? driven) in BeltPath.Ends(
            between, belt.PitchLength.Meters, drive.ContactPitchRadius.Meters,
            drive.FullShiftTravel.Meters - drive.ContactTravel.Meters, drive.SheaveHalfAngleDeg * (Math.PI / 180)))
        {
            if (radius + driven < between)
                continue;
            item.Refuse("centreDistance", draft.Findings, new(
                FindingCodes.BeltDoesNotRun,
                $"The belt {belt.Id} of pitch length {Shown.Length(belt.PitchLength.Meters)} does not run over these shafts where "
                + $"the drive clutch {drive.Id} has it at a radius of {Shown.Length(radius)}: it is too short or too long. "
                + "Check the centre distance, the belt and the clutch's contactPitchRadius and travels."));
            return;
        }
    }

    private void CheckYears(string field, int? year)
    {
        foreach (Field reference in FieldRegistry.For(ItemKind.Machine).Where(f => f.Shape == FieldShape.Reference))
        {
            // A year that is not said lies nowhere.
            if (draft.Sound<MachinePiece>((string)reference.Get(machine)!) is not { } piece
                || !(year < piece.FromYear || year > piece.ToYear))
            {
                continue;
            }

            item.Refuse(field, draft.Findings, new(
                FindingCodes.OutsideYears,
                $"The {reference.Name} {piece.Id} covers {piece.FromYear}-{piece.ToYear}. "
                + "Name another, or correct the years of one of them."));
        }
    }
}
