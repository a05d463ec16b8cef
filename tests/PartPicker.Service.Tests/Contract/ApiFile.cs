using System.Text.Json.Nodes;

namespace PartPicker.Service.Tests.Contract;

/// <summary>The API document as a caller has it: the file of the repository, which a test holds equal to what is served.</summary>
internal sealed class ApiFile(JsonNode document)
{
    public static readonly string File = Path.Combine(Repository.Root, "openapi", "part-picker.v1.json");

    public static ApiFile Committed { get; } = Parse(System.IO.File.ReadAllText(File));

    public static ApiFile Parse(string json) => new(JsonNode.Parse(json)!);

    public JsonNode Document => document;

    public IReadOnlyList<ApiOperation> Operations { get; } =
    [
        .. document["paths"]!.AsObject().SelectMany(path => path.Value!.AsObject()
            .Select(method => new ApiOperation(method.Key.ToUpperInvariant(), path.Key, method.Value!.AsObject()))),
    ];

    public ApiOperation Operation(string id) => Operations.Single(operation => operation.Id == id);

    public JsonObject Schema(string name) => document["components"]!["schemas"]![name]!.AsObject();

    /// <summary>The schema itself, where a reference stands in its place.</summary>
    public JsonObject Resolved(JsonNode schema)
    {
        JsonObject at = schema.AsObject();
        while ((string?)at["$ref"] is { } reference)
            at = Schema(reference.Split('/')[^1]);
        return at;
    }
}

/// <summary>One operation of the API document.</summary>
internal sealed record ApiOperation(string Method, string Path, JsonObject Node)
{
    public string Id => (string)Node["operationId"]!;

    public IReadOnlyList<JsonObject> Query => Parameters("query");

    public IReadOnlyList<string> Statuses => [.. Node["responses"]!.AsObject().Select(response => response.Key)];

    /// <summary>The media type and the schema of the body; null where none is sent.</summary>
    public (string MediaType, JsonObject Schema)? Body => Content(Node["requestBody"]);

    /// <summary>The media type and the schema of an answer of that status; null where it has no body, or is not told of.</summary>
    public (string MediaType, JsonObject Schema)? Answer(int status) => Content(Node["responses"]![$"{status}"]);

    private IReadOnlyList<JsonObject> Parameters(string place) =>
    [
        .. (Node["parameters"]?.AsArray() ?? []).Select(parameter => parameter!.AsObject())
            .Where(parameter => (string?)parameter["in"] == place),
    ];

    private static (string MediaType, JsonObject Schema)? Content(JsonNode? holder) =>
        holder?["content"]?.AsObject().Single() is { } content ? (content.Key, content.Value!["schema"]!.AsObject()) : null;
}
