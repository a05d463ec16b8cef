using System.Globalization;
using System.Runtime.CompilerServices;
using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>A machine tied to a measured run.</summary>
/// <param name="Machine">With the friction of the run, where that was solved.</param>
/// <param name="Superseded">Parts of the run that are known by another number today.</param>
internal sealed record AnchoredMachine(
    MachineModel Machine, AnchorFactors Factors, Anchoring Report, MeasuredRun Run, IReadOnlyList<Supersession> Superseded);

/// <summary>Keeps the machines and the solved runs of a catalog revision, for requests in any air and with any target.</summary>
/// <remarks>It lives as long as its revision does; see <see cref="Kept{TKey, TValue}"/>.</remarks>
internal sealed class PreparedMachines
{
    /// <summary>Most machines kept for one revision, and most runs.</summary>
    public const int MaxKept = 32;

    private static readonly ConditionalWeakTable<CatalogSnapshot, PreparedMachines> OfRevision = [];

    private readonly Kept<MachineProfile, MachineModel> machines = new(MaxKept);
    private readonly Kept<RunKey, AnchoredMachine> runs = new(MaxKept);

    public static PreparedMachines Of(CatalogSnapshot catalog) => OfRevision.GetOrCreateValue(catalog);

    /// <summary>The model of a profile, or null with the problem that forbids it.</summary>
    public MachineModel? Machine(MachineProfile profile, List<RequestProblem> problems) =>
        machines.Get(profile, () => MachineModel.Create(profile, problems));

    /// <summary>What was solved of this run, or what <paramref name="solve"/> gives now; a refused run is not kept, so that each request hears why.</summary>
    public AnchoredMachine? Anchored(RunKey run, Func<AnchoredMachine?> solve) => runs.Get(run, solve);
}

/// <summary>Everything that the solving of a run, and the report of it, look at.</summary>
/// <param name="Machine">This one itself: another of the same profile may be on other shims.</param>
/// <param name="Place">Where the run stands in the request: what was superseded says so.</param>
internal sealed record RunKey(
    MachineModel Machine, string Parts, double? EngagementRpm, string Shift, double? FlatShiftRpm, AirState Air, bool SolvesFriction,
    AirLaw Law, string Place)
{
    public static RunKey Of(MachineModel machine, Baseline run, AirLaw law, string place) => new(
        machine,
        PoolKey.TextOf(run.Parts),
        run.EngagementRpm,
        string.Join(' ', run.Shift.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Ratio:R}={p.Rpm:R}"))),
        run.FlatShiftRpm,
        run.Air,
        run.SolveFriction,
        law,
        place);
}
