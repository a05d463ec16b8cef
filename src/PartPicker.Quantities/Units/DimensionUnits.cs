using System.Collections.Frozen;
using UnitsNet;

namespace PartPicker.Quantities;

/// <summary>What one dimension is called, which units it is read in, and how it is written.</summary>
public sealed class DimensionUnits
{
    // A counter writes lbf·ft, lbf*ft, lbf-ft, lbf ft: the sign between the factors of a product means nothing.
    private static readonly char[] ProductSigns = ['·', '⋅', '*', '-', '.', ' '];

    private readonly FrozenDictionary<string, NamedUnit>.AlternateLookup<ReadOnlySpan<char>> exact;
    private readonly FrozenDictionary<string, NamedUnit>.AlternateLookup<ReadOnlySpan<char>> anyCase;

    internal DimensionUnits(
        QuantityInfo info, string noun, string exampleNumber,
        (string Unit, int Decimals) metric, (string Unit, int Decimals) inch, IReadOnlyList<NamedUnit> units)
    {
        Info = info;
        Noun = noun;
        ExampleNumber = exampleNumber;
        Units = units;

        List<KeyValuePair<string, NamedUnit>> entries =
            [.. units.SelectMany(ReadSpellings, (unit, spelling) => KeyValuePair.Create(spelling, unit))];
        exact = entries.ToFrozenDictionary(StringComparer.Ordinal)
            .GetAlternateLookup<ReadOnlySpan<char>>();
        anyCase = entries.DistinctBy(entry => entry.Key, StringComparer.OrdinalIgnoreCase)
            .ToFrozenDictionary(StringComparer.OrdinalIgnoreCase)
            .GetAlternateLookup<ReadOnlySpan<char>>();

        Metric = new UnitForm(exact[metric.Unit], metric.Decimals);
        Inch = new UnitForm(exact[inch.Unit], inch.Decimals);
    }

    public QuantityInfo Info { get; }

    /// <summary>With its article, as in "a length".</summary>
    public string Noun { get; }

    /// <summary>A usual number in the metric unit, for examples.</summary>
    public string ExampleNumber { get; }

    public IReadOnlyList<NamedUnit> Units { get; }

    /// <summary>How an answer in metric units states it.</summary>
    public UnitForm Metric { get; }

    /// <summary>How an answer in inch units states it.</summary>
    public UnitForm Inch { get; }

    /// <summary>As in "17.5 N/mm".</summary>
    public string Example => $"{ExampleNumber} {Metric.Unit.Symbol}";

    public UnitForm In(UnitSystem system) => system == UnitSystem.Inch ? Inch : Metric;

    /// <summary>The unit that a spelling stands for; null when it stands for none of this dimension.</summary>
    public NamedUnit? Find(ReadOnlySpan<char> spelling) =>
        exact.TryGetValue(spelling, out NamedUnit? unit) ? unit
        : FindInAnyCase(spelling) is { AnyCase: true } loose ? loose
        : null;

    /// <summary>The unit that the spelling would stand for if capitals did not matter; for hints.</summary>
    internal NamedUnit? FindInAnyCase(ReadOnlySpan<char> spelling) =>
        anyCase.TryGetValue(spelling, out NamedUnit? unit) ? unit : null;

    internal static IEnumerable<string> ReadSpellings(NamedUnit unit) =>
        unit.Spellings.SelectMany(spelling => spelling.Contains('·', StringComparison.Ordinal)
            ? ProductSigns.Select(sign => spelling.Replace('·', sign))
            : [spelling]);
}

/// <summary>A unit and the decimals that a value in it is rounded to when it leaves.</summary>
public readonly record struct UnitForm(NamedUnit Unit, int Decimals);
