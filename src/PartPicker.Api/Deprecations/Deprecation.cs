using System.Globalization;

namespace PartPicker.Api.Deprecations;

/// <summary>A member or a query parameter that will go: one row of the table.</summary>
/// <param name="Name">By the letter, as it stands on the wire.</param>
/// <param name="Since">From when on it should no longer be used.</param>
/// <param name="Sunset">When it goes.</param>
/// <param name="Instead">What to use instead, as the end of a sentence: "use shiftCurve".</param>
internal sealed record Deprecation(string Name, DateTimeOffset Since, DateTimeOffset Sunset, string Instead)
{
    /// <summary>The wire record that has the member; null for a query parameter.</summary>
    public Type? Record { get; init; }

    /// <summary>The operation that takes the query parameter; null for a member.</summary>
    public string? Operation { get; init; }

    /// <summary>The address that does the same without it, where there is one.</summary>
    public string? Successor { get; init; }

    /// <summary>What the API document says of it.</summary>
    public string Sentence => string.Create(
        CultureInfo.InvariantCulture, $"Deprecated since {Since:yyyy-MM-dd}, gone on {Sunset:yyyy-MM-dd}: {Instead}.");
}
