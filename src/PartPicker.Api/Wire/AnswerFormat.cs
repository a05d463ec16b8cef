using System.Text.Json;
using PartPicker.Api.Docs;
using PartPicker.Quantities;

namespace PartPicker.Api.Wire;

/// <summary>How the caller wants quantities to be written.</summary>
internal sealed record AnswerFormat(UnitSystem Units, bool FullPrecision)
{
    private const string UnitsName = "units";
    private const string PrecisionName = "precision";
    private const string Rounded = "rounded";
    private const string Full = "full";
    private static readonly string[] PrecisionWords = [Rounded, Full];

    /// <summary>The query parameters that are read here.</summary>
    public static readonly IReadOnlyList<QueryParameter> Parameters =
    [
        new(UnitsName, "The system that quantities are written in.")
        {
            Words = [.. Enum.GetValues<UnitSystem>().Select(WireJson.Word)],
            Standard = WireJson.Word(UnitSystem.Metric),
        },
        new(PrecisionName, "Whether numbers are rounded to the digits that mean something, or written in full.")
        {
            Words = PrecisionWords, Standard = Rounded,
        },
    ];

    public string UnitsWord => WireJson.Word(Units);

    public string PrecisionWord => FullPrecision ? Full : Rounded;

    /// <summary>The format of an answer that was written in one.</summary>
    public static AnswerFormat Of(JsonElement answer) => new(
        Enum.GetValues<UnitSystem>().First(system => answer.GetProperty(UnitsName).ValueEquals(WireJson.Word(system))),
        answer.GetProperty(PrecisionName).ValueEquals(Full));

    /// <summary>Reads how the answer is wanted; whatever is wrong with it joins the list of the reader.</summary>
    public static AnswerFormat Read(QueryReader query)
    {
        UnitSystem units = query.Word<UnitSystem>(UnitsName) ?? UnitSystem.Metric;
        string precision = query.Word(PrecisionName, PrecisionWords) ?? Rounded;
        return new AnswerFormat(units, precision == Full);
    }
}
