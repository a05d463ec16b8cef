using Microsoft.OpenApi;

namespace PartPicker.Api.Docs;

/// <summary>How the API document is made from the endpoints and the wire records.</summary>
internal static class OpenApiSetup
{
    public const string DocumentName = "v1";

    public static void AddApiDocument(this IServiceCollection services)
    {
        services.AddEndpointsApiExplorer();
        services.AddSwaggerGen(options =>
        {
            options.SwaggerDoc(DocumentName, new OpenApiInfo
            {
                Title = "Part Picker",
                Version = "1.0",
                Description = "Picks clutch parts for belt-type CVTs: computes each part from first principles "
                    + "and ranks combinations for the engagement rpm and the shift curve that are wanted. "
                    + "In the examples long lists are cut after three entries.",
                License = new OpenApiLicense { Name = "MIT", Identifier = "MIT" },
            });
            options.AddServer(new OpenApiServer
            {
                Url = "/",
                Description = "The service that serves this document.",
            });
            options.CustomSchemaIds(type => type.Name.Replace("Wire", "", StringComparison.Ordinal));
            options.SupportNonNullableReferenceTypes();
            options.NonNullableReferenceTypesAsRequired();
            options.IncludeXmlComments(typeof(OpenApiSetup).Assembly);
            options.SchemaFilter<WireSchemaFilter>();
            options.OperationFilter<OperationTextFilter>();
            options.DocumentFilter<DocumentTextFilter>();
            KeyedOperation.AddSchemes(options);
        });
    }
}
