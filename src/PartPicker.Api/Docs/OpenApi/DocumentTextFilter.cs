using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace PartPicker.Api.Docs;

/// <summary>Says what each group of operations is for.</summary>
internal sealed class DocumentTextFilter : IDocumentFilter
{
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        swaggerDoc.Tags = new HashSet<OpenApiTag>
        {
            new() { Name = "Picks", Description = "Which parts? Ranked, explained answers." },
            new() { Name = "Predictions", Description = "What does one given set of parts do?" },
            new() { Name = "Bulk", Description = "Many questions in one run, as lines of JSON." },
            new() { Name = "Machines", Description = "The machines of the catalog." },
            new() { Name = "Parts", Description = "The parts of the catalog." },
            new() { Name = "Health", Description = "Is the service there, and can it answer?" },
        };
    }
}
