using Microsoft.OpenApi;
using PartPicker.Api.Errors;
using PartPicker.Api.Keys;
using PartPicker.Api.Wire;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PartPicker.Api.Docs;

/// <summary>Says of the operations which keys they take, and what may come back for want of one.</summary>
internal static class KeyedOperation
{
    private const string SecretScheme = "secretKey";
    private const string PublishableScheme = "publishableKey";
    private static readonly string[] Refusals = ["401", "403", "429"];

    public static void AddSchemes(SwaggerGenOptions options)
    {
        options.AddSecurityDefinition(SecretScheme, new OpenApiSecurityScheme
        {
            Type = SecuritySchemeType.Http,
            Scheme = "bearer",
            Description = "A secret key, for programs. On the service's own machine none is needed to read and to ask.",
        });
        options.AddSecurityDefinition(PublishableScheme, new OpenApiSecurityScheme
        {
            Type = SecuritySchemeType.ApiKey,
            In = ParameterLocation.Header,
            Name = SentKey.Header,
            Description = "A publishable key, for the web pages that it is bound to.",
        });
    }

    public static void Describe(OpenApiOperation operation, OperationFilterContext context)
    {
        // One of the two, or none on the service's own machine.
        operation.Security = [Scheme(SecretScheme, context), Scheme(PublishableScheme, context), new OpenApiSecurityRequirement()];
        OpenApiResponses responses = operation.Responses!;
        foreach (string status in Refusals)
        {
            responses[status] = new OpenApiResponse
            {
                Content = new Dictionary<string, IOpenApiMediaType>
                {
                    [ProblemAnswer.MediaType] = new OpenApiMediaType
                    {
                        Schema = context.SchemaGenerator.GenerateSchema(typeof(ProblemWire), context.SchemaRepository),
                    },
                },
            };
        }

        operation.Responses = [];
        foreach ((string status, IOpenApiResponse response) in responses.OrderBy(r => r.Key, StringComparer.Ordinal))
        {
            operation.Responses[status] = response;
            AddHeaders(status, (OpenApiResponse)response);
        }
    }

    private static OpenApiSecurityRequirement Scheme(string name, OperationFilterContext context) =>
        new() { [new OpenApiSecuritySchemeReference(name, context.Document)] = [] };

    private static void AddHeaders(string status, OpenApiResponse response)
    {
        if (status is "401" or "403")
            OperationTextFilter.AddHeader(response, "WWW-Authenticate", "What is missing, as RFC 6750 says it.");
        if (status == "429")
            OperationTextFilter.AddHeader(response, "Retry-After", "Seconds until it may be sent again.");
        if (status is not ("200" or "201" or "429"))
            return;
        OperationTextFilter.AddHeader(
            response, "RateLimit-Policy", "The limits that count for the caller, as \"requests-per-key\";q=1200;w=60.");
        OperationTextFilter.AddHeader(
            response, "RateLimit", "What is left of them, as \"requests-per-key\";r=1199;t=1; t says in how many seconds there will be more.");
    }
}
