using System.Text.Json.Nodes;
using Xunit;

namespace PartPicker.Service.Tests.Contract;

/// <summary>The API only gains within a version: see docs/decisions/0011-contract-checks.md.</summary>
public sealed class AdditiveTests
{
    private static readonly string Released = Path.Combine(Repository.Root, "openapi", "part-picker.v1.released.json");

    private const string Pick = "paths|/v1/picks|post";
    private const string Machines = "paths|/v1/machines|get";
    private const string Schemas = "components|schemas";

    private static readonly Dictionary<string, (Action<JsonNode> Change, string Breach)> Breaking = new()
    {
        ["a path is gone"] = (d => Remove(d, "paths|/v1/parts"), "GET /v1/parts is gone"),
        ["an operation is gone"] = (d => Remove(d, Machines), "GET /v1/machines is gone"),
        ["an operation has another name"] = (d => Set(d, $"{Pick}|operationId", "newPick"), "is called newPick"),
        ["a status is gone"] = (d => Remove(d, $"{Pick}|responses|201"), "no longer answers 201"),
        ["another success"] = (d => Set(d, $"{Pick}|responses|202", new JsonObject { ["description"] = "Later." }), "answers 202 too"),
        ["a header is gone"] = (d => Remove(d, $"{Pick}|responses|201|headers|Location"), "201 no longer has Location"),
        ["another media type of a body"] = (d => Rename(d, $"{Pick}|requestBody|content", "application/json", "text/json"), "is no longer application/json"),
        ["another media type of an answer"] = (d => Rename(d, $"{Pick}|responses|400|content", "application/problem+json", "application/json"), "is no longer application/problem+json"),
        ["a body is needed"] = (d => Set(d, $"{Machines}|requestBody", JsonNode.Parse("""{ "required": true, "content": {} }""")!), "needs a body"),
        ["a parameter is gone"] = (d => At(d, $"{Machines}|parameters").AsArray().RemoveAt(0), "no longer takes use in query"),
        ["a parameter is needed"] = (d => Set(d, $"{Machines}|parameters|0|required", true), "needs use in query"),
        ["a new parameter is needed"] = (
            d => At(d, $"{Machines}|parameters").AsArray().Add(JsonNode.Parse("""{ "name": "new", "in": "query", "required": true, "schema": {} }""")),
            "needs new in query"),
        ["a parameter takes fewer words"] = (d => At(d, $"{Machines}|parameters|2|schema|enum").AsArray().RemoveAt(0), "takes no longer \"armOnRoller\""),
        ["a parameter takes less"] = (d => Set(d, $"{Machines}|parameters|1|schema|maximum", 2090), "has maximum 2090 and had 2100"),
        ["another default"] = (d => Set(d, $"{Pick}|parameters|0|schema|default", "inch"), "has another default"),
        ["a member of a request is gone"] = (d => Remove(d, $"{Schemas}|PickRequest|properties|group"), ".group is gone"),
        ["a member of a request is needed"] = (d => At(d, $"{Schemas}|PickRequest|required").AsArray().Add("outlet"), "needs outlet"),
        ["a member of a request has another type"] = (d => Set(d, $"{Schemas}|PickRequest|properties|group|type", "string"), ".group takes no longer boolean"),
        ["a request takes fewer words"] = (d => At(d, $"{Schemas}|PickRequest|properties|rankBy|enum").AsArray().RemoveAt(1), ".rankBy takes no longer"),
        ["a request takes only words"] = (d => Set(d, $"{Schemas}|PickRequest|properties|outlet|enum", new JsonArray("a")), "takes no longer any word"),
        ["a request takes fewer"] = (d => Set(d, $"{Schemas}|PickRequest|properties|exclude|maxItems", 100), "has maxItems 100 and had 200"),
        ["a request takes shorter texts"] = (d => Set(d, $"{Schemas}|PickRequest|properties|machine|maxLength", 63), "has maxLength 63"),
        ["a request takes no small numbers"] = (d => Set(d, $"{Schemas}|PickRequest|properties|slipMargin|minimum", 1), "has minimum 1 and had 0"),
        ["a new least"] = (d => Set(d, $"{Schemas}|PickRequest|properties|exclude|minItems", 1), "has minItems 1 and had none"),
        ["another pattern"] = (d => Set(d, $"{Schemas}|GridAxis|properties|member|pattern", "^/[a-z]*$"), "has another pattern"),
        ["a request takes no other members"] = (d => Set(d, $"{Schemas}|AnyValue|additionalProperties", false), "takes no other members"),
        ["a way to write a quantity is gone"] = (d => At(d, $"{Schemas}|QuantityInput|oneOf").AsArray().RemoveAt(0), "takes no longer \"string\""),
        ["a member of an answer is gone"] = (d => Remove(d, $"{Schemas}|PickAnswer|properties|work"), ".work is gone"),
        ["a member of an answer may be missing"] = (d => At(d, $"{Schemas}|Work|required").AsArray().RemoveAt(0), "may lack combinations"),
        ["a member of an answer may be null"] = (d => Set(d, $"{Schemas}|Work|properties|proven|type", new JsonArray("boolean", "null")), ".proven may be null"),
        ["an answer has more words"] = (d => At(d, $"{Schemas}|PickAnswer|properties|units|enum").AsArray().Add("nautical"), ".units may be \"nautical\""),
        ["an answer has any word"] = (d => Remove(d, $"{Schemas}|PickAnswer|properties|units|enum"), ".units may be any word"),
        ["an answer is something else too"] = (
            d => At(d, $"{Schemas}|FieldValue|anyOf").AsArray().Add(JsonNode.Parse("""{ "type": "boolean" }""")), "may be \"boolean\""),
        ["a number of an answer is a text"] = (d => Set(d, $"{Schemas}|Quantity|properties|value|type", "string"), ".value may be string"),
    };

    private static readonly Dictionary<string, Action<JsonNode>> Additive = new()
    {
        ["nothing"] = _ => { },
        ["a path"] = d => Set(d, "paths|/v1/new", At(d, "paths|/v1/machines").DeepClone()),
        ["another error"] = d => Set(d, $"{Pick}|responses|418", At(d, $"{Pick}|responses|400").DeepClone()),
        ["a header"] = d => Set(d, $"{Pick}|responses|201|headers|New", new JsonObject()),
        ["a parameter"] = d => At(d, $"{Machines}|parameters").AsArray().Add(JsonNode.Parse("""{ "name": "new", "in": "query", "schema": {} }""")),
        ["a member of a request"] = d => Set(d, $"{Schemas}|PickRequest|properties|new", JsonNode.Parse("""{ "type": "string" }""")!),
        ["a word of a request"] = d => At(d, $"{Schemas}|PickRequest|properties|rankBy|enum").AsArray().Add("price"),
        ["more of a request"] = d => Set(d, $"{Schemas}|PickRequest|properties|exclude|maxItems", 400),
        ["a request without a limit"] = d => Remove(d, $"{Schemas}|PickRequest|properties|slipMargin|maximum"),
        ["a request without a pattern"] = d => Remove(d, $"{Schemas}|GridAxis|properties|member|pattern"),
        ["a request that needs less"] = d => At(d, $"{Schemas}|PickRequest|required").AsArray().RemoveAt(0),
        ["another way to write a quantity"] = d => At(d, $"{Schemas}|QuantityInput|oneOf").AsArray().Add(JsonNode.Parse("""{ "type": "number" }""")),
        ["a whole number that may be any"] = d => Set(d, $"{Schemas}|PickRequest|properties|count|type", "number"),
        ["a member of an answer"] = d => Set(d, $"{Schemas}|PickAnswer|properties|new", JsonNode.Parse("""{ "type": "string" }""")!),
        ["a member of an answer that always comes"] = d => At(d, $"{Schemas}|Work|required").AsArray().Add("new"),
        ["an answer of fewer types"] = d => Set(d, $"{Schemas}|Work|properties|missLowerBound|type", "number"),
        ["a word of an answer less"] = d => At(d, $"{Schemas}|PickAnswer|properties|units|enum").AsArray().RemoveAt(1),
        ["a code"] = d => At(d, $"{Schemas}|Problem|properties|code|enum").AsArray().Add("new-code"),
        ["other words"] = d => Set(d, $"{Schemas}|PickRequest|description", "Other words."),
    };

    public static TheoryData<string> BreakingNames => [.. Breaking.Keys];

    public static TheoryData<string> AdditiveNames => [.. Additive.Keys];

    [Fact]
    public void The_document_only_adds_to_the_released_one()
    {
        IReadOnlyList<string> breaches = AdditiveCheck.Breaches(ApiFile.Parse(File.ReadAllText(Released)), ApiFile.Committed);

        Assert.True(breaches.Count == 0, string.Join('\n', breaches));
    }

    [Theory]
    [MemberData(nameof(BreakingNames))]
    public void What_breaks_callers_is_found(string name)
    {
        (Action<JsonNode> change, string breach) = Breaking[name];

        Assert.Contains(Breaches(change), found => found.Contains(breach, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(AdditiveNames))]
    public void What_is_added_is_none(string name) => Assert.Empty(Breaches(Additive[name]));

    private static IReadOnlyList<string> Breaches(Action<JsonNode> change)
    {
        JsonNode changed = ApiFile.Committed.Document.DeepClone();
        change(changed);
        return AdditiveCheck.Breaches(ApiFile.Committed, new ApiFile(changed));
    }

    private static JsonNode At(JsonNode document, string place) => place.Split('|').Aggregate(
        document, (node, step) => node is JsonArray list ? list[int.Parse(step)]! : node[step]!);

    private static void Set(JsonNode document, string place, JsonNode value)
    {
        int last = place.LastIndexOf('|');
        At(document, place[..last]).AsObject()[place[(last + 1)..]] = value;
    }

    private static void Remove(JsonNode document, string place)
    {
        int last = place.LastIndexOf('|');
        Assert.True(At(document, place[..last]).AsObject().Remove(place[(last + 1)..]), place);
    }

    private static void Rename(JsonNode document, string place, string from, string to)
    {
        JsonObject holder = At(document, place).AsObject();
        JsonNode moved = holder[from]!.DeepClone();
        holder.Remove(from);
        holder[to] = moved;
    }
}
