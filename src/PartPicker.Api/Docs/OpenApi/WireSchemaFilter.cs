using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using PartPicker.Api.Deprecations;
using PartPicker.Api.Errors;
using PartPicker.Api.Wire;
using PartPicker.Quantities;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PartPicker.Api.Docs;

/// <summary>Says of the wire records what their C# types cannot say.</summary>
internal sealed class WireSchemaFilter(DeprecationTable deprecations) : ISchemaFilter
{
    private static readonly NullabilityInfoContext Nullability = new();

    public void Apply(IOpenApiSchema schema, SchemaFilterContext context)
    {
        // Members are described with their records; what comes by itself is a record.
        if (schema is not OpenApiSchema record || context.MemberInfo is not null)
            return;
        record.Description = DocText.OneLine(record.Description);
        if (context.Type == typeof(QuantityInputWire))
            BecomeTextOrObject(record);
        else if (context.Type == typeof(BulkIdWire))
            BecomeTextOrNumber(record);
        else if (context.Type == typeof(AnyValueWire))
            BecomeAnything(record);
        else if (context.Type == typeof(FieldValueWire))
            BecomeAnyFieldValue(record, context);
        else if (record.Properties is { Count: > 0 } members)
            Complete(record, members, context.Type);
    }

    private void Complete(OpenApiSchema record, IDictionary<string, IOpenApiSchema> members, Type type)
    {
        bool isRequest = typeof(IRequestWire).IsAssignableFrom(type);
        // Answers may gain members; a request with a member that is not known is refused.
        record.AdditionalPropertiesAllowed = !isRequest;
        foreach (PropertyInfo property in type.GetProperties())
        {
            string name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
            if (!members.TryGetValue(name, out IOpenApiSchema? member))
                continue;
            member.Description = DocText.OneLine(member.Description);
            // A member that an answer need not have is left out, and never null.
            bool nullable = !isRequest && IsNullable(property) && property.IsDefined(typeof(RequiredMemberAttribute));
            if (member is OpenApiSchema plain)
                CompletePlain(plain, property, nullable);
            else if (nullable)
                members[name] = member = OrNull(member);
            if (deprecations.Member(type, name) is { } deprecation)
                Deprecate(member, deprecation);
        }
    }

    private static void Deprecate(IOpenApiSchema member, Deprecation deprecation)
    {
        member.Description += " " + deprecation.Sentence;
        if (member is OpenApiSchema plain)
            plain.Deprecated = true;
        else
            ((OpenApiSchemaReference)member).Deprecated = true;
    }

    private static void CompletePlain(OpenApiSchema member, PropertyInfo property, bool nullable)
    {
        if (!nullable)
            member.Type &= ~JsonSchemaType.Null;
        if (property.GetCustomAttribute<WordsOfAttribute>() is { } words)
            WordsHolder(member).Enum = Texts(words.Words);
        else if (property.IsDefined(typeof(ObstacleNamesAttribute)))
            Explain(member);
        else if (property.IsDefined(typeof(OnlyTrueAttribute)))
            member.Enum = [JsonValue.Create(true)];
        else if (property.GetCustomAttribute<FormAttribute>() is { } form)
            WordsHolder(member).Pattern = form.Pattern;
        else if (IsErrorCode(property))
            Grow(member, ErrorCodes.All.Select(code => code.Code));
    }

    // Callers must take a word that they do not know: some are added without a new version.
    private static void Grow(OpenApiSchema member, IEnumerable<string> words)
    {
        member.Enum = Texts(words);
        member.Extensions ??= new Dictionary<string, IOpenApiExtension>();
        member.Extensions["x-growing"] = new JsonNodeExtension(JsonValue.Create(true));
        member.Description += " Words may be added to the list.";
    }

    private static void Explain(OpenApiSchema member)
    {
        Grow(member, ObstacleNamesAttribute.Names);
        member.Description += " " + ObstacleNamesAttribute.Sentences;
    }

    private static bool IsErrorCode(PropertyInfo property) =>
        property.Name == nameof(ProblemWire.Code)
        && (property.DeclaringType == typeof(ProblemWire) || property.DeclaringType == typeof(ProblemErrorWire));

    private static OpenApiSchema WordsHolder(OpenApiSchema member) => member.Items as OpenApiSchema ?? member;

    private static bool IsNullable(PropertyInfo property) =>
        Nullability.Create(property).ReadState == NullabilityState.Nullable;

    private static OpenApiSchema OrNull(IOpenApiSchema reference) => new()
    {
        Description = reference.Description,
        AnyOf = [reference, new OpenApiSchema { Type = JsonSchemaType.Null }],
    };

    private static void BecomeTextOrNumber(OpenApiSchema record)
    {
        record.Type = null;
        record.AdditionalPropertiesAllowed = true;
        record.OneOf =
        [
            new OpenApiSchema { Type = JsonSchemaType.String, MinLength = 1, MaxLength = RequestLimits.MaxBulkIdLength },
            new OpenApiSchema { Type = JsonSchemaType.Number },
        ];
    }

    private static void BecomeAnything(OpenApiSchema record)
    {
        record.Type = null;
        record.AdditionalPropertiesAllowed = true;
    }

    private static void BecomeTextOrObject(OpenApiSchema record)
    {
        var parts = new OpenApiSchema
        {
            Type = JsonSchemaType.Object,
            Properties = record.Properties,
            Required = record.Required,
            AdditionalPropertiesAllowed = false,
        };
        var text = new OpenApiSchema
        {
            Type = JsonSchemaType.String,
            MinLength = 1,
            MaxLength = QuantityReader.MaxTextLength,
            Description = "Number and unit, as in \"64.5 g\".",
        };
        record.Type = null;
        record.Properties = null;
        record.Required = null;
        record.AdditionalPropertiesAllowed = true;
        record.OneOf = [text, parts];
    }

    private static void BecomeAnyFieldValue(OpenApiSchema record, SchemaFilterContext context)
    {
        record.Type = null;
        record.Properties = null;
        record.Required = null;
        record.AdditionalPropertiesAllowed = true;
        record.AnyOf =
        [
            new OpenApiSchema { Type = JsonSchemaType.Number },
            new OpenApiSchema { Type = JsonSchemaType.String },
            Schema(typeof(QuantityWire)),
            Schema(typeof(CurveWire)),
            new OpenApiSchema { Type = JsonSchemaType.Array, Items = Schema(typeof(QuantityWire)) },
            new OpenApiSchema { Type = JsonSchemaType.Array, Items = Schema(typeof(HoleWire)) },
            new OpenApiSchema { Type = JsonSchemaType.Array, Items = Schema(typeof(NamedCurveWire)) },
            new OpenApiSchema { Type = JsonSchemaType.Array, Items = Schema(typeof(ClutchFitWire)) },
            new OpenApiSchema { Type = JsonSchemaType.Array, Items = Schema(typeof(KitLineWire)) },
        ];

        IOpenApiSchema Schema(Type type) => context.SchemaGenerator.GenerateSchema(type, context.SchemaRepository);
    }

    private static List<JsonNode> Texts(IEnumerable<string> texts) =>
        [.. texts.Select(text => (JsonNode)JsonValue.Create(text)!)];
}
