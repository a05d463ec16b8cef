using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>
/// What the requests have in common: the machine, sets of parts, measured runs and the air.
/// </summary>
internal sealed class RequestReader(CatalogSnapshot catalog, FaultList faults)
{
    // More ids than a person reads at once are counted, not listed.
    private const int MaxIdsShown = 12;

    private MachineProfile? machine;

    public MachineProfile? Machine(ObjectReader body)
    {
        const string name = "machine";
        if (body.Text(name, "the id of a machine, from GET /v1/machines", required: true) is not { } id)
            return null;
        machine = catalog.FindMachine(id);
        if (machine is not null)
            return machine;
        faults.Add(ErrorCodes.UnknownMachine, body.At(name), id, OneOf(catalog.Machines.Select(m => m.Machine.Id), id));
        return null;
    }

    public Outlet? Outlet(ObjectReader body)
    {
        const string name = "outlet";
        if (body.Text(name, "the id of an outlet") is not { } id)
            return null;
        if (catalog.FindOutlet(id) is { } outlet)
            return outlet;
        faults.Add(ErrorCodes.UnknownOutlet, body.At(name), id, OneOf(catalog.Outlets.Select(o => o.Id), id));
        return null;
    }

    /// <summary>
    /// A set, completed from another one. Null where there is none, or where it has faults.
    /// </summary>
    /// <param name="parent">The object that may hold the set.</param>
    /// <param name="name">Its name there.</param>
    /// <param name="basis">Where members that are left out come from.</param>
    public PartSet? Set(ObjectReader parent, string name, SetBasis basis)
    {
        if (!parent.Has(name))
        {
            _ = parent.Object(name, "a set of parts"); // So that the name is known as one that may be sent.
            return basis.Set;
        }

        int faultsBefore = faults.Count;
        if (parent.Object(name, "a set of parts, as an object") is not { } reader)
            return null;
        string? driveSpring = PartId<DriveSpring>(reader, "driveSpring", basis) ?? basis.Set?.DriveSpring;
        // Masses are not judged by another body than the one that was meant.
        string? sentFlyweight = PartId<Flyweight>(reader, "flyweight", basis);
        string? flyweight = reader.Has("flyweight") ? sentFlyweight : basis.Set?.Flyweight;
        IReadOnlyDictionary<StationName, double>? masses = StationMasses(reader);
        string? step = reader.Text("adjusterStep", "the step of a ramp's adjuster, as text");
        FittedShims? shims = Shims(reader);
        string? drivenSpring = PartId<DrivenSpring>(reader, "drivenSpring", basis) ?? basis.Set?.DrivenSpring;
        string? hole = reader.Text("hole", "the name of a spring hole, as text", basis.MustBeWhole)
            ?? basis.Set?.Hole;
        string? helix = PartId<Helix>(reader, "helix", basis) ?? basis.Set?.Helix;
        reader.RefuseOthers();

        // Station masses belong to their body: another body starts with empty stations.
        masses ??= basis.Set is { } from && flyweight == from.Flyweight ? from.StationMasses : NoMasses;
        step ??= basis.Set is { } on && flyweight == on.Flyweight ? on.AdjusterStep : null;
        if (!reader.Has("shims"))
            shims = basis.Set is { } under && driveSpring == under.DriveSpring ? under.Shims : null;
        PartSet set = new(driveSpring ?? "", flyweight ?? "", masses, drivenSpring ?? "", hole ?? "", helix ?? "")
        {
            AdjusterStep = step,
            Shims = shims,
        };
        CheckAgainstMachine(set, reader);
        return faults.Count > faultsBefore ? null : set;
    }

    // The ids were looked up one by one; what is left belongs together: hole and clutch, masses and body.
    private void CheckAgainstMachine(PartSet set, ObjectReader reader)
    {
        if (machine is null)
            return;
        foreach (RequestProblem problem in SetCheck.Find(catalog, machine, set, reader.Pointer[1..]))
        {
            if (problem.Code is RequestProblemCodes.StationMass or RequestProblemCodes.UnknownAdjusterStep
                    or RequestProblemCodes.TooManyShims
                || (problem.Code == RequestProblemCodes.UnknownHole && set.Hole.Length > 0))
            {
                faults.Add(ErrorCodes.Of(problem.Code), "/" + problem.Place, problem.Sent, problem.Expected);
            }
        }
    }

    public Baseline? Baseline(ObjectReader body, SetBasis fitted)
    {
        int faultsBefore = faults.Count;
        if (body.Object("baseline", "a measured run, as an object") is not { } reader)
            return null;
        PartSet? parts = Set(reader, "parts", fitted);
        if (fitted.MustBeWhole && !reader.Has("parts"))
            reader.RefuseMissing("parts", "the set that was measured: the catalog does not know what is fitted");
        double? engagementRpm = reader.Number("engagementRpm", RequestLimits.MinRpm, RequestLimits.MaxRpm);
        (double? flat, IReadOnlyList<RatioRpm>? curve) = ShiftReader.Read(reader, faults);
        bool solveFriction = reader.Flag("solveFriction") ?? false;
        AirState air = Air(reader);
        reader.RefuseOthers();
        return faults.Count > faultsBefore || parts is null
            ? null
            : new Baseline(parts, engagementRpm, curve ?? [], flat, air) { SolveFriction = solveFriction };
    }

    /// <summary>False where every measured run shall be left aside.</summary>
    public static bool Anchor(ObjectReader reader, FaultList faults)
    {
        bool anchor = reader.Flag("anchor") ?? true;
        if (!anchor && reader.Has("baseline"))
        {
            faults.Add(
                ErrorCodes.Contradiction, reader.At("baseline"), null,
                "no baseline beside anchor false, which leaves every measured run aside");
        }

        return anchor;
    }

    public static AirState Air(ObjectReader reader) => new(
        reader.Quantity("altitude", QuantityRule.Altitude) ?? 0,
        reader.Quantity("temperature", QuantityRule.Temperature))
    {
        RelativeHumidity = reader.Quantity("relativeHumidity", QuantityRule.RelativeHumidity),
    };

    /// <summary>Ids that shall not be proposed; each must be in the catalog.</summary>
    public IReadOnlySet<string> Excluded(ObjectReader body)
    {
        HashSet<string> ids = [];
        foreach ((JsonElement item, string pointer) in
            body.List("exclude", 0, RequestLimits.MaxExcluded, "an array of part ids") ?? [])
        {
            if (item.ValueKind != JsonValueKind.String)
                faults.Add(ErrorCodes.WrongType, pointer, item.GetRawText(), "the id of a part, as text");
            else if (catalog.FindPart(item.GetString()!) is null)
                faults.Add(
                    ErrorCodes.UnknownPart, pointer, item.GetString()!,
                    "the id of a part in the catalog"
                    + Nearest.Hint(item.GetString()!, catalog.All<Part>().Select(part => part.Id)));
            else if (catalog.FindPart(item.GetString()!) is Belt)
            {
                faults.Add(
                    ErrorCodes.NotChosen, pointer, item.GetString()!,
                    "the id of a part that picks choose, or of a kit; this is a belt");
            }
            else
                ids.Add(item.GetString()!);
        }

        return ids;
    }

    private FittedShims? Shims(ObjectReader set)
    {
        if (set.Object("shims", "a shim and a count, as an object") is not { } reader)
            return null;
        if (!reader.Has("count"))
            reader.RefuseMissing("count", $"how many, from 0 to {RequestLimits.MaxShims}");
        int? count = reader.Count("count", 0, RequestLimits.MaxShims);
        string? shim = PartId<Shim>(reader, "shim", new SetBasis(null, MustBeWhole: count > 0));
        reader.RefuseOthers();
        return shim is not null && count > 0 ? new FittedShims(shim, count.Value) : null;
    }

    private string? PartId<T>(ObjectReader reader, string name, SetBasis basis) where T : Part
    {
        string noun = KindNouns.Of(typeof(T));
        if (reader.Text(name, $"the id of a {noun}", basis.MustBeWhole) is not { } id)
            return null;
        switch (catalog.FindPart(id))
        {
            case T:
                return id;
            case null:
                faults.Add(
                    ErrorCodes.UnknownPart, reader.At(name), id,
                    $"the id of a {noun} in the catalog{Nearest.Hint(id, catalog.All<T>().Select(part => part.Id))}");
                return null;
            case var other:
                faults.Add(
                    ErrorCodes.WrongKind, reader.At(name), id,
                    $"the id of a {noun}; this is a {KindNouns.Of(other.GetType())}");
                return null;
        }
    }

    private static Dictionary<StationName, double>? StationMasses(ObjectReader set)
    {
        if (set.Object("stationMasses", "masses by station, as an object") is not { } reader)
            return null;
        Dictionary<StationName, double> masses = [];
        foreach (StationName station in Enum.GetValues<StationName>())
        {
            // An empty station is one that is not listed, so that a set has one spelling.
            if (reader.Quantity(WireJson.Word(station), QuantityRule.StationMass) is { } mass and not 0)
                masses[station] = mass;
        }

        reader.RefuseOthers();
        return masses;
    }

    /// <summary>What ids there are, for a person: at most a dozen by name, and the one that was probably meant.</summary>
    public static string OneOf(IEnumerable<string> ids, string sent)
    {
        string[] all = [.. ids];
        string shown = string.Join(", ", all.Take(MaxIdsShown));
        string listed = all.Length switch
        {
            0 => "nothing: the catalog holds none",
            > MaxIdsShown => $"one of: {shown} and {all.Length - MaxIdsShown} more",
            _ => $"one of: {shown}",
        };
        return listed + Nearest.Hint(sent, all);
    }

    private static readonly Dictionary<StationName, double> NoMasses = [];
}
