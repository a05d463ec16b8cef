using System.Text.Json.Nodes;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

[Collection(ServiceTests.Name)]
public sealed class OpenApiFileTests(Service service)
{
    private static readonly string File = Path.Combine(Repository.Root, "openapi", "part-picker.v1.json");

    [Fact]
    public async Task The_served_document_is_the_committed_one()
    {
        string served = (await service.GetAsync("/openapi/v1.json")).Text.TrimEnd() + "\n";

        Assert.True(
            KeptFile.Read(File, served) == served,
            $"openapi/part-picker.v1.json is not what the service serves. {KeptFile.HowTo}");
    }

    [Fact]
    public async Task It_is_an_OpenAPI_3_1_document() =>
        Assert.StartsWith("3.1", (string?)(await Document())["openapi"]);

    [Fact]
    public async Task Every_operation_says_what_it_is_and_what_may_come_back()
    {
        foreach ((string name, JsonNode operation) in await Operations())
        {
            Assert.True((string?)operation["operationId"] is { Length: > 0 }, $"{name} has no operationId.");
            Assert.True((string?)operation["summary"] is { Length: > 0 }, $"{name} has no summary.");
            Assert.True((string?)operation["description"] is { Length: > 0 }, $"{name} has no description.");
            Assert.Single(operation["tags"]!.AsArray());
            JsonObject responses = operation["responses"]!.AsObject();
            Assert.Contains(responses, response => response.Key.StartsWith('2'));
            foreach ((string status, JsonNode? response) in responses.Where(r => r.Key[0] is '4' or '5'))
            {
                JsonNode? schema = response!["content"]?["application/problem+json"]?["schema"];
                Assert.True(
                    (string?)schema?["$ref"] == "#/components/schemas/Problem",
                    $"{name} does not say that {status} is a problem document.");
            }
        }
    }

    [Fact]
    public async Task Every_operation_shows_a_request_and_an_answer()
    {
        foreach ((string name, JsonNode operation) in await Operations())
        {
            if (operation["requestBody"] is { } body)
                Assert.True(IsIllustrated(body), $"{name} shows no request.");
            JsonNode success = operation["responses"]!.AsObject().First(r => r.Key.StartsWith('2')).Value!;
            Assert.True(IsIllustrated(success), $"{name} shows no answer.");
        }
    }

    [Fact]
    public async Task Every_member_of_every_schema_is_explained()
    {
        foreach ((string name, JsonNode? schema) in (await Document())["components"]!["schemas"]!.AsObject())
        {
            Assert.True((string?)schema!["description"] is { Length: > 0 }, $"{name} is not explained.");
            foreach ((string member, JsonNode? value) in schema["properties"]?.AsObject() ?? [])
                Assert.True((string?)value!["description"] is { Length: > 0 }, $"{name}.{member} is not explained.");
        }
    }

    [Fact]
    public async Task Every_name_that_may_stand_in_the_way_is_listed_with_its_sentence_and_no_other()
    {
        JsonNode rule = (await Document())["components"]!["schemas"]!["Obstacle"]!["properties"]!["rule"]!;

        Assert.Equal(RuleNames.Obstacles.Select(name => name.Name), rule["enum"]!.AsArray().Select(name => (string)name!));
        string page = FitDocs.Markdown();
        foreach (RuleName name in RuleNames.Obstacles)
        {
            Assert.Contains($"`{name.Name}`: {name.Meaning}", (string)rule["description"]!);
            Assert.Contains($"| `{name.Name}` | {name.Meaning} |", page);
        }
    }

    private static bool IsIllustrated(JsonNode sent)
    {
        JsonNode media = Assert.Single(sent["content"]!.AsObject()).Value!;
        return media["example"] is not null || media["examples"] is JsonObject { Count: > 0 };
    }

    private async Task<JsonNode> Document() => (await service.GetAsync("/openapi/v1.json")).Json;

    private async Task<IReadOnlyList<(string Name, JsonNode Operation)>> Operations() =>
        [.. (await Document())["paths"]!.AsObject().SelectMany(path => path.Value!.AsObject()
            .Select(operation => ($"{operation.Key} {path.Key}", operation.Value!)))];
}
