using System.Text.Json.Nodes;

namespace PartPicker.Service.Tests.Contract;

/// <summary>A place in a body at which a value may stand.</summary>
/// <param name="Pointer">JSON pointer to it.</param>
/// <param name="Schema">What may stand there, references followed.</param>
internal sealed record BodyPlace(string Pointer, JsonObject Schema)
{
    /// <summary>Every place of the bodies of an operation. What a bulk line asks is left to the operation for one.</summary>
    public static IReadOnlyList<BodyPlace> Of(ApiFile api, ApiOperation operation)
    {
        List<BodyPlace> places = [];
        Walk(api.Resolved(operation.Body!.Value.Schema), "");
        return places;

        void Walk(JsonObject schema, string pointer)
        {
            foreach (JsonNode? one in schema["oneOf"]?.AsArray() ?? [])
                Walk(one!.AsObject(), pointer);
            foreach ((string name, JsonNode? member) in schema["properties"]?.AsObject() ?? [])
            {
                if (name != "request")
                    Add(api.Resolved(member!), $"{pointer}/{name}");
            }

            if (schema["items"] is { } items)
                Add(api.Resolved(items), $"{pointer}/0");
        }

        void Add(JsonObject schema, string pointer)
        {
            places.Add(new BodyPlace(pointer, schema));
            Walk(schema, pointer);
        }
    }

    /// <summary>A body with this JSON at the place, and a member that makes sure that it is refused and not computed.</summary>
    public string Body(string json)
    {
        string body = json;
        string[] steps = Pointer.Split('/')[1..];
        for (int i = steps.Length - 1; i >= 0; i--)
        {
            string beside = i > 0 ? "" : ", \"refuse\": true";
            string machine = i > 0 || steps[0] == "machine" ? "" : $", \"machine\": \"{SampleCatalog.Machine}\"";
            string points = i > 0 || steps[0] == "ratioPoints" ? "" : ", \"ratioPoints\": 15";
            body = steps[i] == "0" ? $"[{body}]" : $"{{ \"{steps[i]}\": {body}{machine}{points}{beside} }}";
        }

        return body;
    }
}
