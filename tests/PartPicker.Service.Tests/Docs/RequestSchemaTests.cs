using System.Text.Json.Nodes;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>
/// The document promises exactly what the reader of requests keeps: members, and which are required.
/// </summary>
[Collection(ServiceTests.Name)]
public sealed class RequestSchemaTests(Service service)
{
    // Either of the two shift members is required, which a list of required members cannot say.
    private static readonly string[] EitherOr = ["shiftRpm", "shiftCurve"];

    public static TheoryData<string, string> Requests => new()
    {
        { "/v1/picks", "PickRequest" },
        { "/v1/predictions", "PredictionRequest" },
    };

    [Theory]
    [MemberData(nameof(Requests))]
    public async Task The_reader_takes_the_members_of_the_schema_and_no_others(string path, string schema)
    {
        foreach ((string pointer, JsonObject shape) in await Objects(schema))
        {
            IReadOnlyList<Fault> faults = await Faults(path, At(pointer, new JsonObject { ["zz"] = 1 }));

            Fault unknown = Assert.Single(faults, f => f.Pointer == $"{pointer}/zz");
            Assert.Equal("unknown-member", unknown.Code);
            Assert.Equal(
                shape["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal),
                unknown.Expected["one of: ".Length..].Split(", ").Order(StringComparer.Ordinal));
        }
    }

    [Theory]
    [MemberData(nameof(Requests))]
    public async Task The_reader_asks_for_the_members_that_the_schema_requires(string path, string schema)
    {
        foreach ((string pointer, JsonObject shape) in await Objects(schema))
        {
            IReadOnlyList<Fault> faults = await Faults(path, At(pointer, []));

            IEnumerable<string> missing = faults
                .Where(f => f.Code == "missing-member" && f.Pointer[..f.Pointer.LastIndexOf('/')] == pointer)
                .Select(f => f.Pointer[(f.Pointer.LastIndexOf('/') + 1)..]);
            Assert.Equal(
                (shape["required"]?.AsArray() ?? []).Select(name => (string)name!).Order(StringComparer.Ordinal),
                missing.Except(EitherOr).Order(StringComparer.Ordinal));
        }
    }

    private async Task<IReadOnlyList<Fault>> Faults(string path, JsonNode body)
    {
        // A wrong member makes sure that the request is refused before it is computed.
        body["refuse"] = true;
        Answer answer = await service.PostAsync(path, body.ToJsonString());
        Assert.Equal(400, answer.Status);
        return [.. answer.Json["errors"]!.AsArray().Select(e => new Fault(
            (string)e!["pointer"]!, (string)e["code"]!, (string)e["expected"]!))];
    }

    /// <summary>Every object that a request may hold, by its place in the body, with its schema.</summary>
    private async Task<IReadOnlyList<(string Pointer, JsonObject Shape)>> Objects(string schema)
    {
        JsonNode schemas = (await service.GetAsync("/openapi/v1.json")).Json["components"]!["schemas"]!;
        List<(string, JsonObject)> found = [];
        Walk("", schemas[schema]!.AsObject());
        Assert.True(found.Count > 5);
        return found;

        void Walk(string pointer, JsonObject shape)
        {
            // A quantity is text or an object; only the object has members.
            JsonObject members = shape["oneOf"]?[1]!.AsObject() ?? shape;
            found.Add((pointer, members));
            foreach ((string name, JsonNode? member) in members["properties"]!.AsObject())
            {
                if (Reference(member!) is { } one)
                    Walk($"{pointer}/{name}", one);
                else if (member!["items"] is { } items && Reference(items) is { } each)
                    Walk($"{pointer}/{name}/0", each);
            }
        }

        JsonObject? Reference(JsonNode member) =>
            (string?)member["$ref"] is { } reference ? schemas[reference.Split('/')[^1]]!.AsObject() : null;
    }

    /// <summary>A body that holds this object at that place.</summary>
    private static JsonObject At(string pointer, JsonObject inner)
    {
        JsonNode node = inner;
        foreach (string step in pointer.Split('/', StringSplitOptions.RemoveEmptyEntries).Reverse())
            node = step == "0" ? new JsonArray(node) : new JsonObject { [step] = node };
        if (pointer.Length > 0)
            node["machine"] = SampleCatalog.Machine;
        return node.AsObject();
    }

    private sealed record Fault(string Pointer, string Code, string Expected);
}
