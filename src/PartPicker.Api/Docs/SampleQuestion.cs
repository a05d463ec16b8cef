using PartPicker.Api.Wire;
using PartPicker.Parts;

namespace PartPicker.Api.Docs;

/// <summary>A question that makes sense for a catalog: a machine is asked for the rpm of its own measured run.</summary>
internal static class SampleQuestion
{
    /// <summary>
    /// About the first machine with a measured run, one with a measured profile if there is one: others get no ranking.
    /// Null where no machine has a run.
    /// </summary>
    public static PickRequestWire? Of(CatalogSnapshot catalog)
    {
        MachineProfile? profile = catalog.Machines.Where(machine => machine.OwnBaseline is not null)
            .OrderBy(machine => machine.ClassDefaults.Any())
            .FirstOrDefault();
        if (profile?.OwnBaseline is not { } run)
            return null;
        return new PickRequestWire
        {
            Machine = profile.Machine.Id,
            Targets = new TargetsWire
            {
                EngagementRpm = run.EngagementRpm,
                ShiftRpm = run.FlatShiftRpm,
                ShiftCurve = run.FlatShiftRpm is null ? RequestWriter.Curve(run.Shift) : null,
            },
            Fitted = profile.Machine.Fitted is null ? RequestWriter.Set(run.Parts) : null,
        };
    }
}
