using System.Collections.Frozen;

namespace PartPicker.Parts;

/// <summary>Everything that one import brought, before it has a revision.</summary>
public sealed record CatalogContents(IReadOnlyList<CatalogItem> Items, IReadOnlyList<Outlet> Outlets);

/// <summary>One revision of the catalog, immutable; swapped whole.</summary>
public sealed class CatalogSnapshot
{
    private readonly FrozenDictionary<string, Part> parts;
    private readonly FrozenDictionary<string, MachineProfile> machines;
    private readonly FrozenDictionary<string, Outlet> outlets;

    /// <param name="revision">A hash of the contents: equal contents have equal revisions.</param>
    /// <param name="contents">Checked items; every id that a machine names must be among them.</param>
    /// <exception cref="ArgumentException">A machine or a flyweight names a piece that is not there.</exception>
    public CatalogSnapshot(string revision, CatalogContents contents)
    {
        Revision = revision;
        Contents = contents;
        var pieces = contents.Items.ToDictionary(p => p.Id, StringComparer.Ordinal);
        parts = contents.Items.OfType<Part>().Select(Whole).ToFrozenDictionary(p => p.Id, StringComparer.Ordinal);
        machines = pieces.Values.OfType<Machine>()
            .Select(m => new MachineProfile(
                m,
                Piece<Engine>(m, m.EngineId),
                Piece<DriveClutch>(m, m.DriveClutchId),
                Piece<DrivenClutch>(m, m.DrivenClutchId),
                Piece<Belt>(m, m.BeltId),
                Piece<Gearing>(m, m.GearingId)))
            .ToFrozenDictionary(m => m.Machine.Id, StringComparer.Ordinal);
        outlets = contents.Outlets.ToFrozenDictionary(o => o.Id, StringComparer.Ordinal);

        // A body of grams alone gets the curves of its profile here, once, so that nobody else needs to know of profiles.
        Part Whole(Part part) => part is Flyweight { ArmProfileId: { } id } flyweight
            ? flyweight.With(Piece<ArmProfile>(flyweight, id))
            : part;

        T Piece<T>(CatalogItem owner, string id) where T : CatalogItem =>
            pieces.TryGetValue(id, out CatalogItem? piece) && piece is T found
                ? found
                : throw new ArgumentException(
                    $"{owner.Kind} '{owner.Id}' names {typeof(T).Name} '{id}', which the catalog does not hold.");
    }

    public string Revision { get; }

    /// <summary>What it was made from, as imported: bodies of grams alone have no curves here.</summary>
    public CatalogContents Contents { get; }

    /// <summary>Parts by rising id, so that nothing depends on the order of rows.</summary>
    public IEnumerable<T> All<T>() where T : Part =>
        parts.Values.OfType<T>().OrderBy(p => p.Id, StringComparer.Ordinal);

    /// <summary>Machines by rising id.</summary>
    public IEnumerable<MachineProfile> Machines =>
        machines.Values.OrderBy(m => m.Machine.Id, StringComparer.Ordinal);

    /// <summary>The part of an id as it stands in the catalog, replaced or not.</summary>
    public Part? FindPart(string id) => parts.GetValueOrDefault(id);

    /// <summary>The part that an id leads to today: replaced parts lead on to what replaced them.</summary>
    public Part? FindCurrentPart(string id) => FindPart(id, enough: _ => false);

    /// <summary>The part of an id where it is enough; else the first that is of those that replaced it, or the last of them.</summary>
    /// <remarks>The import refuses longer chains and loops; the limit guards contents from elsewhere.</remarks>
    public Part? FindPart(string id, Func<Part, bool> enough)
    {
        Part? part = FindPart(id);
        for (int steps = 0; part?.SupersededBy is { } next && !enough(part) && steps < MaxSupersessions; steps++)
            part = FindPart(next);
        return part;
    }

    /// <summary>Longest chain of replacements that is followed.</summary>
    public const int MaxSupersessions = 20;

    public MachineProfile? FindMachine(string id) => machines.GetValueOrDefault(id);

    public Outlet? FindOutlet(string id) => outlets.GetValueOrDefault(id);

    public IEnumerable<Outlet> Outlets => outlets.Values.OrderBy(o => o.Id, StringComparer.Ordinal);
}
