using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Authorization;
using Microsoft.OpenApi;
using PartPicker.Api.Deprecations;
using PartPicker.Api.Picks;
using PartPicker.Api.Wire;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PartPicker.Api.Docs;

/// <summary>
/// Says of the operations what their endpoints cannot say: parameters, statuses, headers, examples.
/// </summary>
internal sealed class OperationTextFilter(DeprecationTable deprecations) : IOperationFilter
{
    // Blanks alone are no text.
    private const string NotBlank = @"\S";

    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        foreach (IOpenApiParameter parameter in operation.Parameters ?? [])
            parameter.Description = "The id, as another answer gave it.";
        IEnumerable<object> metadata = context.ApiDescription.ActionDescriptor.EndpointMetadata;
        if (metadata.OfType<IAllowAnonymous>().Any())
            operation.Security = []; // No key is needed; the empty list says so outright.
        else
            KeyedOperation.Describe(operation, context);
        operation.Parameters =
            [.. operation.Parameters ?? [], .. metadata.OfType<QueryParameter>().Select(parameter => Parameter(
                parameter, deprecations.Parameter(operation.OperationId, parameter.Name)))];
        foreach ((string status, IOpenApiResponse response) in operation.Responses ?? [])
        {
            if (IsLines(response.Content))
                BeLines((OpenApiResponse)response, context);
            else
                Describe(status, (OpenApiResponse)response, operation.OperationId);
        }

        if (operation.RequestBody is OpenApiRequestBody body)
        {
            body.Required = true;
            body.Description = IsLines(body.Content)
                ? $"The questions, each as JSON on a line of its own of at most {RequestLimits.MaxBodyBytes} bytes, as many as you "
                    + "like. The schema and each of the examples are one line."
                : $"The question, as JSON of at most {RequestLimits.MaxBodyBytes} bytes.";
        }

        foreach (ExampleName example in metadata.OfType<ExampleName>())
            Illustrate(operation, example);
    }

    private static OpenApiParameter Parameter(QueryParameter parameter, Deprecation? deprecation) => new()
    {
        Name = parameter.Name,
        In = ParameterLocation.Query,
        Description = deprecation is null ? parameter.Sentence : $"{parameter.Sentence} {deprecation.Sentence}",
        Deprecated = deprecation is not null,
        Style = ParameterStyle.Form,
        Explode = true, // The usual way of a query, and the only one: a name for each value.
        Schema = ValueOf(parameter),
        Example = parameter.ExampleOfMany,
    };

    private static OpenApiSchema ValueOf(QueryParameter parameter)
    {
        if (parameter.ExampleOfMany is not null)
        {
            return new OpenApiSchema
            {
                Type = JsonSchemaType.Object,
                AdditionalProperties = new OpenApiSchema { Type = JsonSchemaType.String },
            };
        }

        return new OpenApiSchema
        {
            Type = parameter.Range is null ? JsonSchemaType.String : JsonSchemaType.Integer,
            Enum = parameter.Words?.Select(word => (JsonNode)JsonValue.Create(word)!).ToList(),
            Minimum = parameter.Range?.Min.ToString(CultureInfo.InvariantCulture),
            Maximum = parameter.Range?.Max.ToString(CultureInfo.InvariantCulture),
            MinLength = parameter.MaxLength is null ? null : 1,
            MaxLength = parameter.MaxLength,
            Pattern = parameter.MaxLength is null ? null : NotBlank,
            Default = parameter.Standard,
        };
    }

    private static void Describe(string status, OpenApiResponse response, string? operationId)
    {
        response.Description = status switch
        {
            "200" => "The answer.",
            "201" => "The answer, which is stored and can be fetched again at Location.",
            "303" => "The answer of today stands at Location.",
            "304" => "The answer is still the one with the tag that was sent in If-None-Match.",
            "400" => "The request has faults; errors lists all of them.",
            "404" => "There is no such thing.",
            "408" => "The body came too slowly.",
            "410" => "It was there, and is past its expiry.",
            "413" => "The body is too large.",
            "415" => "The body is not of the media type above, or not plain UTF-8.",
            "500" => "Something went wrong inside the service.",
            "401" => "A key is needed, or the one that was sent does not count; code tells which.",
            "403" => "The key does not allow this, or not from this origin; code tells which.",
            "429" => "A key or an address sends more than its limit allows; detail names the limit.",
            "503" => "No catalog is loaded, the answer took too long, or too many ask; code tells which.",
            _ => response.Description,
        };
        bool byChance = status == "200" && operationId is ("createPick" or "getLatestPick");
        if (byChance)
            response.Description = "The best list so far, where the clock ended the search; it is not stored, and no tag names it.";
        else if (status is "200" or "201" or "304")
            AddHeader(response, "ETag", "A hash of the bytes of the answer.");
        if (status is "201" or "303")
            AddHeader(response, "Location", "Where the stored answer can be fetched.");
        if (status == "200" && operationId == "listParts")
            AddHeader(response, "Link", "The next page, as rel=\"next\" (RFC 8288); none on the last.");
        if (status == "503" && operationId is "pickMany" or "predictMany" or "createPick" or "predict")
            AddHeader(response, "Retry-After", "Seconds until it may be sent again, where too many ask.");
        if (status == "201" || (status is "200" or "304" && operationId == "getPick"))
            DescribeKept(response);
    }

    private static void DescribeKept(OpenApiResponse response)
    {
        AddHeader(response, "Sunset", "When the stored answer may go (RFC 8594); fetching it moves the date.");
        AddHeader(
            response, KeptPick.StatusHeader,
            $"{KeptPick.Current}; or {KeptPick.CatalogChanged}, {KeptPick.ModelChanged} or both, joined by a comma, where the "
            + "same question may get another answer today.");
        AddHeader(response, "Link", "Where something has changed, the answer of today as rel=\"latest-version\" (RFC 5829).");
    }

    private static bool IsLines(IDictionary<string, IOpenApiMediaType>? content) =>
        content?.ContainsKey(WireJson.LinesMediaType) ?? false;

    // No tag names the bytes of a stream, which are not known when its headers are sent.
    private static void BeLines(OpenApiResponse response, OperationFilterContext context)
    {
        response.Description = "The answers, each as JSON on a line of its own, and a last line with done. The schema and each "
            + "of the examples are one line.";
        var lines = (OpenApiMediaType)response.Content![WireJson.LinesMediaType];
        lines.Schema = new OpenApiSchema
        {
            AnyOf = [lines.Schema!, context.SchemaGenerator.GenerateSchema(typeof(BulkEndWire), context.SchemaRepository)],
        };
    }

    public static void AddHeader(OpenApiResponse response, string name, string text)
    {
        response.Headers ??= new Dictionary<string, IOpenApiHeader>();
        response.Headers[name] = new OpenApiHeader
        {
            Description = text,
            Schema = new OpenApiSchema { Type = JsonSchemaType.String },
        };
    }

    private static void Illustrate(OpenApiOperation operation, ExampleName example)
    {
        if (Examples.Read($"{example.Name}.request.json") is { } request)
            SetExample(operation.RequestBody!.Content!, request);
        foreach ((string status, IOpenApiResponse response) in operation.Responses!)
        {
            string file = status.StartsWith('2')
                ? $"{example.AnswerOf}.answer.json"
                : $"{example.Name}.{status}.json";
            if (Examples.Read(file) is { } answer)
                SetExample(response.Content!, answer);
        }
    }

    // What is sent as lines stands in the file of the example as an array of them.
    private static void SetExample(IDictionary<string, IOpenApiMediaType> content, JsonNode example)
    {
        var media = (OpenApiMediaType)content.Values.Single();
        if (!IsLines(content))
        {
            media.Example = example;
            return;
        }

        media.Examples = example.AsArray().Select((line, i) => ($"line{i + 1}", line)).ToDictionary(
            line => line.Item1, line => (IOpenApiExample)new OpenApiExample { Value = line.line!.DeepClone() });
    }
}
