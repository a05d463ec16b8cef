using PartPicker.Api.Wire;
using PartPicker.Parts;

namespace PartPicker.Api.Docs;

/// <summary>
/// A question that makes sense for a catalog: which parts hold the rpm of a machine's measured run in the mountains, where
/// the thin air takes torque away and the fitted ones no longer do.
/// </summary>
internal static class SampleQuestion
{
    private const double HigherM = 1_500;

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
            Altitude = new QuantityInputWire
            {
                Value = Math.Min(Math.Round((run.Air.AltitudeM + HigherM) / 100) * 100, RequestLimits.MaxAltitudeM), Unit = "m",
            },
            Fitted = profile.Machine.Fitted is null ? RequestWriter.Set(run.Parts) : null,
        };
    }
}
