using System.Text.Json;
using System.Text.Json.Nodes;
using PartPicker.Api.Errors;

namespace PartPicker.Api.Bulk;

/// <summary>One thing to be answered: a line of a run, or one point of the grid of a line.</summary>
/// <param name="Line">Its number in the body, from 1.</param>
internal sealed record BulkItem(long Line)
{
    /// <summary>What the caller calls the line; text or a number, null when nothing was sent.</summary>
    public JsonElement? Id { get; init; }

    /// <summary>Which point of the grid, from 1; null where there is no grid.</summary>
    public int? Point { get; init; }

    /// <summary>The values of this point by the member that they were put into.</summary>
    public JsonObject? Axes { get; init; }

    /// <summary>What is asked, as the address for one of them takes it.</summary>
    public JsonElement Request { get; init; }

    /// <summary>What is wrong with the line itself; null where it can be asked.</summary>
    public ProblemAnswer? Refusal { get; init; }
}
