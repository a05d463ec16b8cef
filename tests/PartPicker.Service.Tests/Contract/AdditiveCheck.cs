using System.Globalization;
using System.Text.Json.Nodes;

namespace PartPicker.Service.Tests.Contract;

/// <summary>
/// Whether a newer API document keeps every promise of an older one: requests that were right stay right, and answers stay
/// within what was told. What is added beside is no breach.
/// </summary>
/// <remarks>
/// Words may be added to a list of answers that says so by x-growing. A status of an error may be added, because callers have
/// to expect any problem document; a new status of success may not.
/// </remarks>
internal sealed class AdditiveCheck(ApiFile older, ApiFile newer)
{
    private readonly List<string> breaches = [];
    private readonly HashSet<string> seen = [];

    private enum Way
    {
        Request, // Whatever was taken must be taken.
        Answer, // Nothing may come that was not told.
    }

    /// <summary>Each breach with its place; none where the newer document only adds.</summary>
    public static IReadOnlyList<string> Breaches(ApiFile older, ApiFile newer)
    {
        AdditiveCheck check = new(older, newer);
        foreach (ApiOperation operation in older.Operations)
            check.Compare(operation);
        return check.breaches;
    }

    private void Compare(ApiOperation old)
    {
        string place = $"{old.Method} {old.Path}";
        if (newer.Operations.FirstOrDefault(o => (o.Method, o.Path) == (old.Method, old.Path)) is not { } now)
        {
            breaches.Add($"{place} is gone");
            return;
        }

        if (now.Id != old.Id)
            breaches.Add($"{place} is called {now.Id} and no longer {old.Id}");
        CompareParameters(place, old, now);
        CompareContent(Way.Request, $"{place} body", old.Node["requestBody"], now.Node["requestBody"]);
        if (old.Body is null && (bool?)now.Node["requestBody"]?["required"] == true)
            breaches.Add($"{place} needs a body");
        foreach ((string status, JsonNode? response) in old.Node["responses"]!.AsObject())
        {
            JsonNode? same = now.Node["responses"]![status];
            if (same is null)
            {
                breaches.Add($"{place} no longer answers {status}");
                continue;
            }

            CompareContent(Way.Answer, $"{place} {status}", response, same);
            foreach (string header in (response!["headers"]?.AsObject() ?? []).Select(h => h.Key))
            {
                if (same["headers"]?[header] is null)
                    breaches.Add($"{place} {status} no longer has {header}");
            }
        }

        foreach (string added in now.Statuses.Except(old.Statuses).Where(status => status[0] is not ('4' or '5')))
            breaches.Add($"{place} answers {added} too");
    }

    private void CompareParameters(string place, ApiOperation old, ApiOperation now)
    {
        Dictionary<string, JsonObject> before = Named(old);
        Dictionary<string, JsonObject> after = Named(now);
        foreach ((string name, JsonObject parameter) in before)
        {
            if (!after.TryGetValue(name, out JsonObject? same))
                breaches.Add($"{place} no longer takes {name}");
            else
                Compare(Way.Request, $"{place} {name}", parameter["schema"]!, same["schema"]!);
        }

        foreach ((string name, JsonObject parameter) in after)
        {
            if ((bool?)parameter["required"] == true && (bool?)before.GetValueOrDefault(name)?["required"] != true)
                breaches.Add($"{place} needs {name}");
        }

        static Dictionary<string, JsonObject> Named(ApiOperation operation) => (operation.Node["parameters"]?.AsArray() ?? [])
            .Select(parameter => parameter!.AsObject())
            .ToDictionary(parameter => $"{parameter["name"]} in {parameter["in"]}");
    }

    private void CompareContent(Way way, string place, JsonNode? old, JsonNode? now)
    {
        foreach ((string mediaType, JsonNode? content) in old?["content"]?.AsObject() ?? [])
        {
            if (now?["content"]?[mediaType] is { } same)
                Compare(way, $"{place} {mediaType}", content!["schema"]!, same["schema"]!);
            else
                breaches.Add($"{place} is no longer {mediaType}");
        }
    }

    private void Compare(Way way, string place, JsonNode oldSchema, JsonNode newSchema)
    {
        // The same pair of named schemas is compared once, wherever it stands: they may hold themselves.
        if ((string?)oldSchema["$ref"] is { } name && !seen.Add($"{way} {name} {newSchema["$ref"]}"))
            return;
        JsonObject old = older.Resolved(oldSchema);
        JsonObject now = newer.Resolved(newSchema);
        // Only requests are closed: what an answer repeats of one, is what its caller chose to send.
        if (IsClosed(old))
            way = Way.Request;
        if (IsChoice(old) || IsChoice(now))
        {
            CompareChoices(way, place, old, now);
            return;
        }

        CompareTypes(way, place, old, now);
        CompareWords(way, place, old, now);
        foreach (string limit in new[] { "minimum", "minLength", "minItems" })
            CompareLimit(way, place, limit, -1, old, now);
        foreach (string limit in new[] { "maximum", "maxLength", "maxItems" })
            CompareLimit(way, place, limit, 1, old, now);
        JsonObject binding = way == Way.Request ? now : old;
        JsonObject free = way == Way.Request ? old : now;
        if (binding["pattern"] is { } pattern && !JsonNode.DeepEquals(pattern, free["pattern"]))
            breaches.Add($"{place} has another pattern");
        if (way == Way.Request && !JsonNode.DeepEquals(old["default"], now["default"]))
            breaches.Add($"{place} has another default");
        CompareMembers(way, place, old, now);
        if (old["items"] is { } items && now["items"] is { } newItems)
            Compare(way, $"{place}[]", items, newItems);
        if (old["additionalProperties"] is JsonObject each && now["additionalProperties"] is JsonObject newEach)
            Compare(way, $"{place}{{}}", each, newEach);
    }

    private void CompareTypes(Way way, string place, JsonObject old, JsonObject now)
    {
        (JsonObject narrow, JsonObject wide) = way == Way.Request ? (old, now) : (now, old);
        if (Types(wide) is not { } allowed)
            return;
        if (Types(narrow) is not { } used)
            breaches.Add($"{place} {(way == Way.Request ? "takes no longer" : "may be")} any type");
        else if (used.Where(type => !allowed.Contains(type) && !(type == "integer" && allowed.Contains("number"))).ToArray() is { Length: > 0 } broken)
            breaches.Add($"{place} {(way == Way.Request ? "takes no longer" : "may be")} {string.Join(", ", broken)}");
    }

    private static string[]? Types(JsonObject schema) => schema["type"] switch
    {
        null => null,
        JsonArray several => [.. several.Select(type => (string)type!)],
        var one => [(string)one!],
    };

    private void CompareWords(Way way, string place, JsonObject old, JsonObject now)
    {
        (JsonNode? narrow, JsonNode? wide) = way == Way.Request ? (old["enum"], now["enum"]) : (now["enum"], old["enum"]);
        if (wide is null || (way == Way.Answer && (bool?)old["x-growing"] == true))
            return;
        string[] allowed = [.. wide.AsArray().Select(word => word!.ToJsonString())];
        string[] broken = narrow is null ? ["any word"] : [.. narrow.AsArray().Select(word => word!.ToJsonString()).Except(allowed)];
        if (broken.Length > 0)
            breaches.Add($"{place} {(way == Way.Request ? "takes no longer" : "may be")} {string.Join(", ", broken)}");
    }

    // A request may only be given more room, an answer may only take less.
    private void CompareLimit(Way way, string place, string limit, int outwards, JsonObject old, JsonObject now)
    {
        double before = Bound(old);
        double after = Bound(now);
        if ((way == Way.Request ? after - before : before - after) * outwards < 0 || (way == Way.Answer && after != before && double.IsInfinity(after)))
            breaches.Add($"{place} has {limit} {now[limit]?.ToJsonString() ?? "no more"} and had {old[limit]?.ToJsonString() ?? "none"}");

        double Bound(JsonObject schema) => schema[limit] is { } bound
            ? double.Parse(bound.ToJsonString(), CultureInfo.InvariantCulture)
            : outwards * double.PositiveInfinity;
    }

    private void CompareMembers(Way way, string place, JsonObject old, JsonObject now)
    {
        foreach ((string name, JsonNode? member) in old["properties"]?.AsObject() ?? [])
        {
            if (now["properties"]?[name] is { } same)
                Compare(way, $"{place}.{name}", member!, same);
            else
                breaches.Add($"{place}.{name} is gone");
        }

        string[] before = Required(old);
        string[] after = Required(now);
        string[] broken = way == Way.Request ? [.. after.Except(before)] : [.. before.Except(after)];
        if (broken.Length > 0)
            breaches.Add($"{place} {(way == Way.Request ? "needs" : "may lack")} {string.Join(", ", broken)}");
        if (way == Way.Request && !IsClosed(old) && IsClosed(now))
            breaches.Add($"{place} takes no other members any more");

        static string[] Required(JsonObject schema) => [.. (schema["required"]?.AsArray() ?? []).Select(name => (string)name!)];
    }

    private static bool IsClosed(JsonObject schema) => schema["additionalProperties"] is JsonValue open && !(bool)open;

    private static bool IsChoice(JsonObject schema) => schema["oneOf"] is not null || schema["anyOf"] is not null;

    // Each way to send must have one that takes it; each way to answer must be one that was told.
    private void CompareChoices(Way way, string place, JsonObject old, JsonObject now)
    {
        JsonNode[] before = Choices(old);
        JsonNode[] after = Choices(now);
        foreach (JsonNode one in way == Way.Request ? before : after)
        {
            bool kept = way == Way.Request
                ? Array.Exists(after, other => IsKept(way, one, other))
                : Array.Exists(before, other => IsKept(way, other, one));
            if (!kept)
                breaches.Add($"{place} {(way == Way.Request ? "takes no longer" : "may be")} {one["$ref"] ?? one["type"]?.ToJsonString()}");
        }

        static JsonNode[] Choices(JsonObject schema) =>
            [.. (schema["oneOf"] ?? schema["anyOf"])?.AsArray().Select(one => one!) ?? [schema]];
    }

    private bool IsKept(Way way, JsonNode old, JsonNode now)
    {
        AdditiveCheck inner = new(older, newer);
        inner.seen.UnionWith(seen);
        inner.Compare(way, "", old, now);
        return inner.breaches.Count == 0;
    }
}
