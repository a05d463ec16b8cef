namespace PartPicker.Parts;

/// <summary>A place that sells: what it has and asks, in one currency.</summary>
/// <param name="Id">How a request names it.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Offers">By part id. A price is for one pack.</param>
public sealed record Outlet(string Id, string Currency, IReadOnlyDictionary<string, Offer> Offers)
{
    /// <summary>Minutes of work to change a slot; shown, never ranked.</summary>
    public IReadOnlyDictionary<Slot, int> LabourMinutes { get; init; } = new Dictionary<Slot, int>();
}

/// <summary>Price of a pack in minor units of the outlet's currency, and packs in stock; null when not known.</summary>
public sealed record Offer(long? PriceMinor, int? Stock);
