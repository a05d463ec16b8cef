using System.Text.Json;
using System.Text.Json.Nodes;
using PartPicker.Api.Errors;

namespace PartPicker.Api.Wire;

/// <summary>Reads the axes of a bulk line.</summary>
internal static class GridReader
{
    // A decimal keeps the zeros at its end; divided by this one it loses them.
    private const decimal OneToAllPlaces = 1.0000000000000000000000000000m;

    private static readonly string MostPoints = $"axes whose values make at most {RequestLimits.MaxGridPoints} points";

    /// <summary>The grid; null where the line has none, or where the list holds why not.</summary>
    public static Grid? Read(ObjectReader line, JsonElement? request, FaultList faults)
    {
        int before = faults.Count;
        if (line.List("axes", 1, RequestLimits.MaxAxes, "an array of axes") is not { } items)
            return null;
        List<GridAxis> axes = [];
        foreach ((JsonElement item, string pointer) in items)
        {
            if (ObjectReader.Open(item, pointer, faults) is not { } members)
                continue;
            if (Axis(members, faults) is not { } axis)
                continue;
            if (axes.Exists(other => Meet(other.Member, axis.Member)))
                faults.Add(ErrorCodes.Contradiction, members.At("member"), axis.Member, "a member that no other axis sets or lies in");
            axes.Add(axis);
        }

        if (request is not { } asked || faults.Count > before)
            return null;
        long count = 1;
        foreach (GridAxis axis in axes)
            count = Math.Min(count * axis.Values, int.MaxValue);
        if (count > RequestLimits.MaxGridPoints)
            faults.Add(ErrorCodes.GridTooLarge, line.At("axes"), null, MostPoints);
        else if (Base(asked, line.At("request"), faults) is { } plain && Fits(plain, axes, line, faults))
            return new Grid(plain, axes, (int)count);
        return null;
    }

    // One inside the other would make its values depend on those of the other.
    private static bool Meet(string one, string other) =>
        $"{one}/".StartsWith($"{other}/", StringComparison.Ordinal) || $"{other}/".StartsWith($"{one}/", StringComparison.Ordinal);

    private static GridAxis? Axis(ObjectReader axis, FaultList faults)
    {
        string? member = Member(axis, faults);
        GridAxis? steps = axis.Has("values") ? Listed(axis, faults) : Stepped(axis, faults);
        axis.RefuseOthers();
        return member is null || steps is null ? null : steps with { Member = member };
    }

    private static string? Member(ObjectReader axis, FaultList faults)
    {
        const string Expected = "a JSON pointer (RFC 6901) into request, as in \"/altitude\" or \"/targets/shiftRpm\"";
        if (axis.Text("member", Expected, required: true) is not { } member)
            return null;
        if (member[0] == '/' && JsonPointer.Steps(member).Length <= RequestLimits.MaxDepth)
            return member;
        faults.Add(ErrorCodes.OutOfRange, axis.At("member"), member, Expected);
        return null;
    }

    private static GridAxis? Listed(ObjectReader axis, FaultList faults)
    {
        foreach (string other in new[] { "from", "to", "step", "unit" })
        {
            if (axis.Any(other, "no values beside it") is { } sent)
                faults.Add(ErrorCodes.Contradiction, axis.At(other), sent.GetRawText(), "values, or from, to and step");
        }

        return axis.List("values", 1, RequestLimits.MaxGridPoints, "an array of values") is { } values
            ? new GridAxis("", values.Count, i => Node(values[i].Element))
            : null;
    }

    private static GridAxis? Stepped(ObjectReader axis, FaultList faults)
    {
        const double Most = RequestLimits.MaxAxisNumber;
        double? from = axis.Number("from", -Most, Most, required: true);
        double? to = axis.Number("to", -Most, Most, required: true);
        double? step = axis.Number("step", RequestLimits.MinAxisStep, Most, required: true);
        string? unit = axis.Text("unit", "text, as in \"m\"");
        _ = axis.Any("values", "an array of values");
        if (from is not { } first || to is not { } last || step is not { } by)
            return null;
        if (last < first)
        {
            faults.Add(ErrorCodes.EmptyRange, axis.At("to"), null, "a number that is not below from");
            return null;
        }

        // Tenths are exact as decimals, so that the steps of 0.1 end where a person expects.
        (decimal start, decimal width) = ((decimal)first, (decimal)by);
        long values = (long)decimal.Floor(((decimal)last - start) / width) + 1;
        return new GridAxis("", (int)Math.Min(values, int.MaxValue), i => Quantity(start + i * width, unit));
    }

    private static JsonNode Quantity(decimal number, string? unit)
    {
        decimal shortest = number / OneToAllPlaces;
        return unit is null ? JsonValue.Create(shortest) : new JsonObject { ["value"] = shortest, ["unit"] = unit };
    }

    private static JsonNode? Node(JsonElement value) => JsonNode.Parse(value.GetRawText());

    // Members that stand twice cannot be set, and which of them counts is not clear.
    private static JsonObject? Base(JsonElement request, string pointer, FaultList faults)
    {
        try
        {
            if (JsonNode.Parse(
                request.GetRawText(), nodeOptions: null,
                new JsonDocumentOptions { AllowDuplicateProperties = false }) is JsonObject plain)
                return plain;
            faults.Add(ErrorCodes.WrongType, pointer, request.GetRawText(), "an object");
        }
        catch (JsonException)
        {
            faults.Add(ErrorCodes.DuplicateMember, pointer, null, "each member once");
        }

        return null;
    }

    // Whether a pointer leads somewhere is the same at every point: one tells for all.
    private static bool Fits(JsonObject plain, List<GridAxis> axes, ObjectReader line, FaultList faults)
    {
        JsonNode tried = plain.DeepClone();
        bool fits = true;
        for (int i = 0; i < axes.Count; i++)
        {
            if (Grid.TrySet(tried, axes[i].Member, axes[i].Value(0)))
                continue;
            fits = false;
            faults.Add(
                ErrorCodes.OutOfRange, JsonPointer.Member(JsonPointer.Item(line.At("axes"), i), "member"), axes[i].Member,
                "a pointer to a member of request, or to an entry that its array has");
        }

        return fits;
    }
}
