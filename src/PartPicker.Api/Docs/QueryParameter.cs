using System.Text.Json.Nodes;

namespace PartPicker.Api.Docs;

/// <summary>A query parameter as the API document tells it.</summary>
/// <param name="Name">By the letter.</param>
/// <param name="Sentence">What it does, and what holds without it.</param>
internal sealed record QueryParameter(string Name, string Sentence)
{
    /// <summary>Every word that it takes; null: any text.</summary>
    public IReadOnlyList<string>? Words { get; init; }

    /// <summary>Least and greatest number that it takes; null: no number.</summary>
    public (int Min, int Max)? Range { get; init; }

    /// <summary>What holds without it.</summary>
    public JsonNode? Standard { get; init; }

    /// <summary>Longest text that it takes.</summary>
    public int? MaxLength { get; init; }

    /// <summary>
    /// Parameters of many names, as in { "rate.min": "60 lbf/in" }; null: this one stands for itself. The name is
    /// then only what the document calls all of them.
    /// </summary>
    public JsonObject? ExampleOfMany { get; init; }
}
