using System.Text;
using System.Text.Json;

namespace PartPicker.Catalog;

/// <summary>A value of a JSON file and the pointer (RFC 6901) that leads to it.</summary>
internal readonly record struct JsonValue(JsonElement Element, string Pointer)
{
    public JsonValueKind Kind => Element.ValueKind;

    /// <summary>A text without its quotes, anything else as it stands in the file.</summary>
    public string Written => Kind == JsonValueKind.String ? Element.GetString()! : Element.GetRawText();

    public IEnumerable<JsonValue> Entries()
    {
        string pointer = Pointer;
        return Element.EnumerateArray().Select((entry, i) => new JsonValue(entry, $"{pointer}/{i}"));
    }
}

/// <summary>A JSON file and where its findings go.</summary>
internal sealed class JsonSource(string file, Findings findings)
{
    // Only so that the check of Parse, and not the reader of JSON, meets what is nested too deep.
    private const int ReaderDepth = 512;

    public string File => file;

    public Findings Findings => findings;

    /// <summary>The pointer to a member of what another pointer leads to.</summary>
    public static string Below(string pointer, string member) =>
        $"{pointer}/{member.Replace("~", "~0").Replace("/", "~1")}";

    /// <summary>The whole file; null when it is no JSON.</summary>
    public JsonValue? Parse(string text)
    {
        byte[] utf8 = Encoding.UTF8.GetBytes(text);
        var reader = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = ReaderDepth });
        try
        {
            // The document would take half a surrogate pair and throw only when the text is asked for.
            while (reader.Read())
            {
                if (reader.TokenType is JsonTokenType.StartArray or JsonTokenType.StartObject
                    && reader.CurrentDepth >= ImportLimits.MaxJsonDepth)
                {
                    RefuseLine(LineOf(reader.TokenStartIndex),
                        $"Lists and objects are nested deeper than the {ImportLimits.MaxJsonDepth} levels that are read. "
                        + "Look for a bracket that is not closed.");
                    return null;
                }

                if (reader.TokenType is JsonTokenType.String or JsonTokenType.PropertyName && reader.ValueIsEscaped)
                    _ = reader.GetString();
            }

            using var document = JsonDocument.Parse(utf8);
            return new JsonValue(document.RootElement.Clone(), "");
        }
        catch (JsonException e)
        {
            RefuseLine((int)(e.LineNumber ?? 0) + 1,
                $"The file is no JSON from byte {(e.BytePositionInLine ?? 0) + 1} of this line on. Look for a comma, a "
                + "quote or a bracket that is missing or too many; JSON has no comments and no trailing comma.");
        }
        catch (InvalidOperationException)
        {
            RefuseLine(LineOf(reader.TokenStartIndex), "A text holds one half of a surrogate pair. Write the character itself.");
        }

        return null;

        int LineOf(long index) => 1 + utf8.AsSpan(0, (int)index).Count((byte)'\n');
    }

    public void Refuse(JsonValue at, Refusal refusal) =>
        findings.Add(file, null, at.Pointer, at.Written, refusal);

    public void Refuse(Token at, Refusal refusal) =>
        findings.Add(file, null, at.Place, at.Written, refusal);

    public void RefuseMissing(JsonValue parent, string member, string reason) =>
        findings.Add(file, null, Below(parent.Pointer, member), null, new(FindingCodes.MissingValue, reason));

    private void RefuseLine(int line, string reason) =>
        findings.Add(file, line, null, null, new(FindingCodes.BadJson, reason));

    /// <summary>True when the value is of that kind; otherwise it is refused.</summary>
    public bool Is(JsonValue value, JsonValueKind kind, string expected)
    {
        if (value.Kind == kind)
            return true;
        Refuse(value, new(FindingCodes.WrongShape, $"{expected} belongs here."));
        return false;
    }

    /// <summary>The members of an object. No object, and a name that comes twice, are refused.</summary>
    public IReadOnlyList<(string Name, JsonValue Value)> Members(JsonValue value, string expected)
    {
        var members = new List<(string, JsonValue)>();
        if (!Is(value, JsonValueKind.Object, expected))
            return members;
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (JsonProperty property in value.Element.EnumerateObject())
        {
            var member = new JsonValue(property.Value, Below(value.Pointer, property.Name));
            if (seen.Add(property.Name))
                members.Add((property.Name, member));
            else
                Refuse(member, new(FindingCodes.DuplicateMember, "The member stands twice. Leave one out."));
        }

        return members;
    }

    /// <summary>The members of an object by name, of those known here; others are refused.</summary>
    public Dictionary<string, JsonValue> Members(
        JsonValue value, string expected, IReadOnlyCollection<string> known)
    {
        var members = new Dictionary<string, JsonValue>(StringComparer.Ordinal);
        foreach ((string name, JsonValue member) in Members(value, expected))
        {
            if (known.Contains(name))
            {
                members.Add(name, member);
                continue;
            }

            Refuse(member, new(
                FindingCodes.UnknownMember, $"No such member. Known here: {string.Join(", ", known)}."));
        }

        return members;
    }
}
