namespace PartPicker.Parts;

/// <summary>A thing that can be bought and fitted, with the facts of its trade.</summary>
public abstract record Part : CatalogItem
{
    /// <summary>How a supplier hands it over.</summary>
    public SoldAs? SoldAs { get; init; }

    /// <summary>Pieces in one pack; 1 where nothing is said, a whole set of arms for flyweights sold as a set.</summary>
    public int? PackQuantity { get; init; }

    /// <summary>Id of the part that replaced this one. A replaced part is never proposed.</summary>
    public string? SupersededBy { get; init; }

    /// <summary>The clutches that the supplier lists it for; null: the supplier does not say.</summary>
    public IReadOnlyList<ClutchFit>? FitsClutches { get; init; }

    /// <summary>True when the supplier lists this part for a clutch in all of these years; a null year is open.</summary>
    public bool ListedFor(string clutchId, int? fromYear, int? toYear) => FitsClutches is { } fits && fits.Any(f =>
        f.ClutchId == clutchId
        && (f.FromYear ?? int.MinValue) <= (fromYear ?? int.MinValue)
        && (toYear ?? int.MaxValue) <= (f.ToYear ?? int.MaxValue));
}

public enum SoldAs
{
    Each,
    Pair,
    Set,
}

/// <summary>A clutch that a part is listed for, and the model-years; null years are open.</summary>
public sealed record ClutchFit(string ClutchId, int? FromYear, int? ToYear);
