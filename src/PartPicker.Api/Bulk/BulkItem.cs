using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Bulk;

/// <summary>One thing to be answered: a line of a run, or one point of the grid of a line.</summary>
/// <param name="Line">Its number in the body, from 1.</param>
internal sealed record BulkItem(long Line)
{
    /// <summary>What the caller calls the line, text or a number; null when nothing was sent.</summary>
    public JsonElement? Id { get; init; }

    /// <summary>Which point of the grid; null where there is no grid.</summary>
    public GridPoint? Point { get; init; }

    /// <summary>What is asked, as the address for one of them takes it.</summary>
    public JsonElement Request { get; init; }

    /// <summary>What is wrong with the line itself; null where it can be asked.</summary>
    public ProblemAnswer? Refusal { get; init; }
}
