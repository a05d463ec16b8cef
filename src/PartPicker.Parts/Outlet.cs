namespace PartPicker.Parts;

/// <summary>A place that sells: what it has and asks, in one currency.</summary>
/// <param name="Id">How a request names it.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Offers">By part id. A flyweight is priced by the full set.</param>
public sealed record Outlet(string Id, string Currency, IReadOnlyDictionary<string, Offer> Offers);

/// <summary>Price in minor units of the outlet's currency and pieces in stock; null when not known.</summary>
public sealed record Offer(long? PriceMinor, int? Stock);
