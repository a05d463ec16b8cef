namespace PartPicker.Parts;

/// <summary>Anything a catalog names by an id: a part, a piece of a machine profile, a machine.</summary>
public abstract record CatalogItem
{
    /// <summary>Unique within a catalog, across all kinds; at most <see cref="MaxIdLength"/> characters.</summary>
    public string Id { get; init; } = "";

    /// <summary>What a person calls it; may be empty.</summary>
    public string Name { get; init; } = "";

    /// <summary>Where each value came from, by field name; empty where an item states no origins.</summary>
    public IReadOnlyDictionary<string, Origin> Origins { get; init; } = new Dictionary<string, Origin>();

    /// <summary>Which list of the catalog it stands in.</summary>
    public abstract ItemKind Kind { get; }

    public const int MaxIdLength = 64;
}

/// <summary>A piece of a machine profile: geometry, engine or gearing that several machines may share.</summary>
public abstract record MachinePiece : CatalogItem
{
    /// <summary>First model-year that it covers; null: not said.</summary>
    public int? FromYear { get; init; }

    /// <summary>Last model-year that it covers; null: not said, or still made.</summary>
    public int? ToYear { get; init; }
}

/// <summary>The lists of a catalog.</summary>
public enum ItemKind
{
    DriveSpring,
    Flyweight,
    DrivenSpring,
    Helix,
    Belt,
    Shim,
    Kit,
    ArmProfile,
    Engine,
    DriveClutch,
    DrivenClutch,
    Gearing,
    Machine,
}

/// <summary>How a value of a machine profile is known.</summary>
public enum Origin
{
    /// <summary>Taken with an instrument from a machine of this kind.</summary>
    Measured,

    /// <summary>Read from a drawing or a data sheet.</summary>
    Drawing,

    /// <summary>Printed by a maker to sell: good for a peak, and less sure than a drawing.</summary>
    Brochure,

    /// <summary>A usual value for clutches of this class: not good enough for absolute rpm.</summary>
    ClassDefault,
}

/// <summary>One point of a curve, in SI units; the field says which quantities.</summary>
public readonly record struct CurvePoint(double X, double Y);
