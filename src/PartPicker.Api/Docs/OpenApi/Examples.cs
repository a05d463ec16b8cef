using System.Reflection;
using System.Text.Json.Nodes;

namespace PartPicker.Api.Docs;

/// <summary>
/// The worked examples of the API document: questions, and the answers that they really got.
/// </summary>
internal static class Examples
{
    /// <summary>The example of that file name; null when there is none.</summary>
    public static JsonNode? Read(string file)
    {
        using Stream? stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(file);
        return stream is null ? null : JsonNode.Parse(stream);
    }
}
