using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>What a set of parts names must be there, on its parts and on the clutches of its machine.</summary>
internal sealed class PartSetChecks(CatalogDraft draft)
{
    private static readonly (string Member, ItemKind Kind, Func<PartSet, string> Id)[] References =
    [
        (PartSetReader.DriveSpring, ItemKind.DriveSpring, set => set.DriveSpring),
        (PartSetReader.Flyweight, ItemKind.Flyweight, set => set.Flyweight),
        (PartSetReader.DrivenSpring, ItemKind.DrivenSpring, set => set.DrivenSpring),
        (PartSetReader.Helix, ItemKind.Helix, set => set.Helix),
    ];

    public void Check(PartSet set, Machine machine, string file, string pointer)
    {
        foreach ((string member, ItemKind kind, Func<PartSet, string> id) in References)
            Refuse(member, id(set), ReferenceChecks.Wrong(draft, id(set), kind));
        if (draft.Sound<Flyweight>(set.Flyweight) is { } body)
        {
            CheckStep(body);
            if (WithProfile(body) is { } whole)
            {
                CheckStations(whole);
                CheckMasses(whole);
                CheckTravel(whole);
            }
        }

        if (set.Hole.Length > 0 && draft.Sound<DrivenClutch>(machine.DrivenClutchId) is { } driven)
            Refuse(PartSetReader.Hole, set.Hole, NoHole(driven, set.Hole));
        if (set.Shims is { } shims)
        {
            string place = $"{PartSetReader.Shims}/{PartSetReader.Shim}";
            Refuse(place, shims.ShimId, ReferenceChecks.Wrong(draft, shims.ShimId, ItemKind.Shim));
            if (draft.Sound<DriveClutch>(machine.DriveClutchId) is { } drive)
                Refuse($"{PartSetReader.Shims}/{PartSetReader.Count}", $"{shims.Count}", TooMany(shims, drive));
        }

        void CheckStations(Flyweight whole)
        {
            foreach (StationName station in set.StationMasses.Keys.Except(whole.Stations().Select(s => s.Name)))
            {
                string name = ValueReader.Word($"{station}");
                Refuse($"{PartSetReader.StationMasses}/{name}", null, new(
                    FindingCodes.UnknownStation,
                    $"The flyweight {set.Flyweight} has no {name} station. Leave it out."));
            }
        }

        void CheckMasses(Flyweight whole)
        {
            foreach (MassStation station in whole.Stations())
            {
                double mass = set.StationMasses.GetValueOrDefault(station.Name);
                Refusal? refusal = !station.Carries(mass)
                    ? new(
                        FindingCodes.TooHeavy,
                        $"The station of {set.Flyweight} may carry {Shown.Mass(station.MassLimit!.Value.Kilograms)} at most. Correct the mass or the limit.")
                    : station.Takes(mass) is null
                        ? new(
                            FindingCodes.UnknownMass,
                            $"The station of {set.Flyweight} takes {string.Join(", ", station.Masses.Select(Shown.Mass))}. Name one of these, or list the mass.")
                        : null;
                Refuse($"{PartSetReader.StationMasses}/{ValueReader.Word($"{station.Name}")}", Shown.Mass(mass), refusal);
            }
        }

        void CheckTravel(Flyweight whole)
        {
            if (draft.Sound<DriveClutch>(machine.DriveClutchId) is not { } clutch)
                return;
            IEnumerable<IReadOnlyList<CurvePoint>> curves =
            [
                .. (whole.AdjusterCurves ?? []).Where(c => c.Name == set.AdjusterStep).Select(c => c.Points),
                whole.RadiusCurve,
                .. whole.Stations().Select(s => s.RadiusCurve),
            ];
            if (curves.Where(c => c.Count > 0).Select(c => FlyweightChecks.WhereItStands(c, clutch.FullShiftTravel.Meters))
                .FirstOrDefault(x => x is not null) is { } at)
            {
                Refuse(PartSetReader.Flyweight, set.Flyweight, new(
                    FindingCodes.WrongTrend, $"On the clutch {clutch.Id} it cannot be computed. {FlyweightChecks.Stands(at)}"));
            }
        }

        void CheckStep(Flyweight ramp)
        {
            string[] steps = [.. (ramp.AdjusterCurves ?? []).Select(c => c.Name)];
            if (set.AdjusterStep is not { } step ? steps.Length == 0 : step.Length == 0 || steps.Contains(step))
                return;
            Refuse(PartSetReader.AdjusterStep, set.AdjusterStep, new(
                set.AdjusterStep is null ? FindingCodes.MissingValue : FindingCodes.UnknownStep,
                steps.Length == 0
                    ? $"The flyweight {ramp.Id} has no adjustable ramp. Leave the step out."
                    : $"Name the step of the ramp {ramp.Id}. It has {string.Join(", ", steps)}."));
        }

        void Refuse(string member, string? value, Refusal? refusal)
        {
            if (refusal is not null)
                draft.Findings.Add(file, null, $"{pointer}/{member}", value, refusal);
        }
    }

    /// <summary>The body with the curves of its profile; null when that was refused.</summary>
    private Flyweight? WithProfile(Flyweight body) => body.ArmProfileId is not { } id
        ? body
        : draft.Sound<ArmProfile>(id) is { } profile ? body.With(profile) : null;

    private static Refusal? NoHole(DrivenClutch clutch, string hole)
    {
        IReadOnlyList<SpringHole> choices = clutch.TwistChoices();
        return choices.Any(h => h.Name == hole)
            ? null
            : new(
                FindingCodes.UnknownHole,
                $"The driven clutch {clutch.Id} has no such hole. "
                + $"It has {string.Join(", ", choices.Select(h => h.Name))}.");
    }

    private static Refusal? TooMany(FittedShims shims, DriveClutch clutch)
    {
        int limit = clutch.ShimLimit ?? 0;
        return shims.Count <= limit
            ? null
            : new(
                FindingCodes.TooManyShims,
                $"The drive clutch {clutch.Id} takes {limit} shims by its shimLimit. Correct one of the two.");
    }
}
