using PartPicker.Api.Errors;
using PartPicker.Quantities;

namespace PartPicker.Api.Wire;

/// <summary>How the caller wants quantities to be written.</summary>
internal sealed record AnswerFormat(UnitSystem Units, bool FullPrecision)
{
    public const string UnitsParameter = "units";
    public const string PrecisionParameter = "precision";
    private const string Rounded = "rounded";
    private const string Full = "full";

    /// <summary>The words of each parameter; the first counts when it is left out.</summary>
    public static readonly IReadOnlyList<string> UnitsWords =
        [.. Enum.GetValues<UnitSystem>().Select(WireJson.Word)];

    /// <inheritdoc cref="UnitsWords"/>
    public static readonly IReadOnlyList<string> PrecisionWords = [Rounded, Full];

    public string UnitsWord => WireJson.Word(Units);

    public string PrecisionWord => FullPrecision ? Full : Rounded;

    /// <summary>Reads the query; whatever is wrong with it joins the list.</summary>
    public static AnswerFormat Read(IQueryCollection query, FaultList faults)
    {
        foreach (string name in query.Keys.Where(name => name is not (UnitsParameter or PrecisionParameter)))
        {
            faults.AddParameter(
                ErrorCodes.UnknownParameter, name, query[name], $"one of: {UnitsParameter}, {PrecisionParameter}");
        }

        string units = Word(query, UnitsParameter, UnitsWords, faults);
        string precision = Word(query, PrecisionParameter, PrecisionWords, faults);
        return new AnswerFormat(
            Enum.GetValues<UnitSystem>().First(system => WireJson.Word(system) == units), precision == Full);
    }

    private static string Word(IQueryCollection query, string name, IReadOnlyList<string> words, FaultList faults)
    {
        if (!query.TryGetValue(name, out var sent))
            return words[0];
        if (sent.Count == 1 && words.Contains(sent[0]))
            return sent[0]!;
        faults.AddParameter(ErrorCodes.UnknownWord, name, sent, $"one of: {string.Join(", ", words)}; once");
        return words[0];
    }
}
