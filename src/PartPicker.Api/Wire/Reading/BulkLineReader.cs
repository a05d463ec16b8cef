using System.Text.Json;
using PartPicker.Api.Bulk;
using PartPicker.Api.Errors;

namespace PartPicker.Api.Wire;

/// <summary>Reads a line of a bulk run: what it asks, or each point of its grid.</summary>
internal static class BulkLineReader
{
    /// <summary>What is asked, one after the other, so that a grid is never held whole.</summary>
    public static IEnumerable<BulkItem> Read(SentLine line)
    {
        BulkItem item = new(line.Number);
        if (line.Bytes is not { } bytes)
            return [item with { Refusal = Problems.Of(ErrorCodes.BodyTooLarge, RequestBody.TooLarge) }];
        (JsonDocument? json, ProblemAnswer? refusal) = RequestBody.Parse(bytes, line.Number);
        if (json is null)
            return [item with { Refusal = refusal }];
        using (json)
            return Read(item, json.RootElement.Clone());
    }

    private static IEnumerable<BulkItem> Read(BulkItem item, JsonElement line)
    {
        FaultList faults = new(line);
        if (ObjectReader.Open(line, "", faults) is not { } members)
            return [item with { Refusal = Problems.Of(faults) }];
        JsonElement? id = Id(members, faults);
        JsonElement? request = members.Any("request", "the question, as the address for one takes it", required: true);
        Grid? grid = GridReader.Read(members, request, faults);
        members.RefuseOthers();

        item = item with { Id = id };
        if (faults.Count > 0)
            return [item with { Refusal = Problems.Of(faults) }];
        return grid is null
            ? [item with { Request = request!.Value }]
            : grid.Points().Select(point => item with { Request = point.Request, Point = point });
    }

    private static JsonElement? Id(ObjectReader members, FaultList faults)
    {
        string expected = $"text of 1 to {RequestLimits.MaxBulkIdLength} characters, or a number";
        if (members.Any("id", expected) is not { } id)
            return null;
        bool known = id.ValueKind is JsonValueKind.String or JsonValueKind.Number;
        int length = id.ValueKind == JsonValueKind.String ? Characters.Count(id.GetString()!) : id.GetRawText().Length;
        if (known && length is > 0 and <= RequestLimits.MaxBulkIdLength)
            return id;
        faults.Add(known ? ErrorCodes.OutOfRange : ErrorCodes.WrongType, members.At("id"), id.GetRawText(), expected);
        return null;
    }
}
