using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Xunit;

namespace PartPicker.Service.Tests.Contract;

/// <summary>
/// Every limit that the API document states is the one that the service keeps: values just inside and just outside are made
/// from the document, sent, and the faults that are told at their place compared.
/// </summary>
[Collection(ServiceTests.Name)]
public sealed class LimitTests(Service service)
{
    private static readonly ApiFile Api = ApiFile.Committed;

    // One value of each type; a place takes some of the types and must refuse the others.
    private static readonly (string Type, string Json)[] OfEachType =
    [
        ("null", "null"), ("boolean", "true"), ("number", "7"), ("string", "\"x\""), ("array", "[]"), ("object", "{}"),
    ];

    // Texts near the forms of the document, and far from them.
    private static readonly string[] Texts =
    [
        "/altitude", "/targets/shiftRpm", "/", "/a//b", "altitude", "a/b", "#/a", string.Concat(Enumerable.Repeat("/a", 16)),
        string.Concat(Enumerable.Repeat("/a", 17)), "engagementRpm", "upshiftRpm/1", "upshiftRpm/15", "upshiftRpm/16",
        "upshiftRpm/0", "upshiftRpm/01", "upshiftRpm", "slipMargin/9", "anchoring.thrustFactor", "anchoring_thrustFactor",
        "EngagementRpm", "engagementRpm ", "é", "😀", "x\ny",
    ];

    private int held;

    public static TheoryData<string> WithBody => [.. Api.Operations.Where(operation => operation.Body is not null).Select(o => o.Id)];

    public static TheoryData<string> WithQuery => [.. Api.Operations.Where(operation => operation.Query.Count > 0).Select(o => o.Id)];

    [Theory]
    [MemberData(nameof(WithBody))]
    public async Task A_body_is_held_to_the_limits_of_the_document(string id)
    {
        ApiOperation operation = Api.Operation(id);
        foreach (BodyPlace place in BodyPlace.Of(Api, operation))
        {
            async Task<IReadOnlyList<string>> Codes(string json) => await CodesAsync(operation, place, json);
            await CheckTypes(place, Codes);
            await CheckWords(place.Schema, Codes, word => word.ToJsonString());
            await CheckNumbers(place.Schema, Codes);
            foreach (JsonObject schema in Alternatives(place.Schema))
                await CheckLengths(schema, text => Codes(JsonSerializer.Serialize(text)));
            await CheckItems(place.Schema, Codes);
            await CheckForm(place.Schema, text => Codes(JsonSerializer.Serialize(text)));
        }

        Assert.True(held > 5, $"Only {held} limits of {id} were held.");
    }

    [Theory]
    [MemberData(nameof(WithQuery))]
    public async Task A_query_is_held_to_the_limits_of_the_document(string id)
    {
        ApiOperation operation = Api.Operation(id);
        foreach (JsonObject parameter in operation.Query)
        {
            var schema = parameter["schema"]!.AsObject();
            if ((string?)schema["type"] == "object")
                continue; // Filters by field have names of their own.
            async Task<IReadOnlyList<string>> Codes(string value) => await CodesAsync(operation, (string)parameter["name"]!, value);
            await CheckWords(schema, Codes, word => (string)word!);
            await CheckNumbers(schema, Codes);
            await CheckLengths(schema, Codes);
            if (schema["pattern"] is not null)
                await Hold(["out-of-range"], Codes("  \t"), "blanks");
            if ((string?)schema["type"] == "integer")
                await Hold(["out-of-range"], Codes("many"), "a word");
        }

        Assert.True(held > 3, $"Only {held} limits of {id} were held.");
    }

    private async Task CheckTypes(BodyPlace place, Func<string, Task<IReadOnlyList<string>>> codes)
    {
        string[] taken = [.. Alternatives(place.Schema).Select(schema => (string?)schema["type"] ?? "any")];
        if (taken.Contains("any"))
            return;
        foreach ((string type, string json) in OfEachType)
        {
            if (taken.Contains(type) || (type == "number" && taken.Contains("integer")))
                continue;
            IReadOnlyList<string> told = await codes(json);
            Assert.True(
                told is ["wrong-type"] || (told is ["unit-needed"] && type == "number"),
                $"{place.Pointer} takes {string.Join(", ", taken)}; {json} was answered with [{string.Join(", ", told)}].");
            held++;
        }
    }

    private async Task CheckWords(JsonObject schema, Func<string, Task<IReadOnlyList<string>>> codes, Func<JsonNode, string> sent)
    {
        foreach (JsonNode word in (schema["enum"]?.AsArray() ?? []).OfType<JsonNode>())
        {
            await Hold([], codes(sent(word)), word.ToJsonString());
            if (word.GetValueKind() != JsonValueKind.String)
                continue;
            await Hold(["unknown-word"], codes(sent($"{word}".ToUpperInvariant())), "another case");
            await Hold(["unknown-word"], codes(sent($"{word}s")), "another word");
        }

        if (schema["enum"] is JsonArray { Count: 1 } only && only[0]!.GetValueKind() == JsonValueKind.True)
            await Hold(["out-of-range"], codes("false"), "false");
    }

    private async Task CheckNumbers(JsonObject schema, Func<string, Task<IReadOnlyList<string>>> codes)
    {
        bool whole = (string?)schema["type"] == "integer";
        foreach ((string keyword, int outwards) in new[] { ("minimum", -1), ("maximum", 1) })
        {
            if (schema[keyword] is not { } limit)
                continue;
            double bound = (double)limit;
            await Hold([], codes(Text(bound)), $"{keyword} {bound}");
            await Hold([], codes(Text(Next(bound, -outwards, whole))), $"inside {keyword} {bound}");
            await Hold(["out-of-range"], codes(Text(Next(bound, outwards, whole))), $"outside {keyword} {bound}");
            if (whole)
                await Hold(["out-of-range"], codes(Text(bound - outwards / 2.0)), $"half of one inside {keyword} {bound}");
        }

        static double Next(double bound, int direction, bool whole) => whole ? bound + direction
            : direction > 0 ? Math.BitIncrement(bound) : Math.BitDecrement(bound);

        static string Text(double number) => number.ToString("R", CultureInfo.InvariantCulture);
    }

    private async Task CheckLengths(JsonObject schema, Func<string, Task<IReadOnlyList<string>>> codes)
    {
        if ((int?)schema["maxLength"] is not { } most)
            return;
        // Characters are counted, not the places that they take.
        foreach (string character in new[] { "x", "é", "😀" })
        {
            await Inside(most, character);
            Assert.NotEmpty(await codes(Repeated(character, most + 1)));
            held++;
        }

        // A quantity may be as long as that: its zeros say nothing.
        if (!(await codes("7 m")).Contains("out-of-range"))
            Assert.DoesNotContain("out-of-range", await codes("0".PadLeft(most - 3, '0') + "7 m"));
        if ((int?)schema["minLength"] is not { } least || least == 0)
            return;
        await Inside(least, "x");
        Assert.NotEmpty(await codes(Repeated("x", least - 1)));
        held++;

        async Task Inside(int length, string character)
        {
            Assert.DoesNotContain("out-of-range", await codes(Repeated(character, length)));
            held++;
        }

        // What has a form besides, may begin with a stroke.
        string Repeated(string character, int length) => length > 0 && schema["pattern"] is not null
            ? "/" + string.Concat(Enumerable.Repeat(character, length - 1))
            : string.Concat(Enumerable.Repeat(character, length));
    }

    private async Task CheckItems(JsonObject schema, Func<string, Task<IReadOnlyList<string>>> codes)
    {
        if (schema["items"] is null)
            return;
        int least = (int?)schema["minItems"] ?? 0;
        int most = (int)schema["maxItems"]!; // A list of a request without a limit is a fault of the document.
        await Hold([], codes(List(least)), $"{least} items");
        await Hold([], codes(List(most)), $"{most} items");
        await Hold(["out-of-range"], codes(List(most + 1)), $"{most + 1} items");
        if (least > 0)
            await Hold(["out-of-range"], codes(List(least - 1)), $"{least - 1} items");

        static string List(int count) => $"[{string.Join(", ", Enumerable.Repeat("\"x\"", count))}]";
    }

    private async Task CheckForm(JsonObject schema, Func<string, Task<IReadOnlyList<string>>> codes)
    {
        if ((string?)schema["pattern"] is not { } pattern)
            return;
        foreach (string text in Texts)
        {
            bool takes = (await codes(text)).Count == 0;
            Assert.True(
                takes == Regex.IsMatch(text, pattern, RegexOptions.ECMAScript),
                $"The service {(takes ? "takes" : "refuses")} '{text}', unlike {pattern}.");
            held++;
        }
    }

    private async Task Hold(string[] expected, Task<IReadOnlyList<string>> told, string what)
    {
        IReadOnlyList<string> codes = await told;
        Assert.True(
            expected.SequenceEqual(codes),
            $"{what}: expected [{string.Join(", ", expected)}], told [{string.Join(", ", codes)}].");
        held++;
    }

    private static IEnumerable<JsonObject> Alternatives(JsonObject schema) =>
        schema["oneOf"]?.AsArray().Select(one => one!.AsObject()) ?? [schema];

    private async Task<IReadOnlyList<string>> CodesAsync(ApiOperation operation, BodyPlace place, string json)
    {
        string body = place.Body(json);
        Answer answer = operation.Body!.Value.MediaType == "application/json"
            ? await service.PostAsync(operation.Path, body)
            : await service.PostLinesAsync(operation.Path, body);
        JsonNode problem = answer.Status == 200 ? answer.Lines[0]!["problem"]! : answer.Json;
        Assert.Equal(400, (int)problem["status"]!);
        return Codes(problem, place.Pointer);
    }

    // A parameter that nobody knows makes sure that the request is refused and not answered.
    private async Task<IReadOnlyList<string>> CodesAsync(ApiOperation operation, string name, string value)
    {
        string address = $"{operation.Path.Replace("{id}", "x")}?refuse=1&{name}={Uri.EscapeDataString(value)}";
        Answer answer = operation.Body is { } body
            ? await service.SendAsync(HttpMethod.Post, address, new StringContent("{}", new System.Net.Http.Headers.MediaTypeHeaderValue(body.MediaType)))
            : await service.GetAsync(address);
        Assert.Equal(400, answer.Status);
        return Codes(answer.Json, name);
    }

    private static IReadOnlyList<string> Codes(JsonNode problem, string place) =>
    [
        .. problem["errors"]!.AsArray().Where(error => (string)error!["pointer"]! == place).Select(error => (string)error!["code"]!),
    ];
}
