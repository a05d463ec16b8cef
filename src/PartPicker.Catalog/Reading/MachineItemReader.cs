using System.Text.Json;
using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>One object of a machine file: the fields of the registry, each with the origin of its value.</summary>
internal sealed class MachineItemReader
{
    private const string OriginMember = "origin";
    private const string ValueMember = "value";
    private const string FittedMember = "fitted";
    private const string BaselinesMember = "baselines";

    private readonly JsonSource source;
    private readonly Dictionary<string, Origin> origins = [];
    private readonly Dictionary<string, string> written = [];

    private MachineItemReader(JsonSource source) => this.source = source;

    public static DraftItem Read(JsonSource source, ItemKind kind, JsonValue entry) =>
        new MachineItemReader(source).ReadItem(kind, entry);

    private DraftItem ReadItem(ItemKind kind, JsonValue entry)
    {
        int before = source.Findings.Count;
        IReadOnlyList<Field> fields = FieldRegistry.For(kind);
        string[] extra = kind == ItemKind.Machine ? [OriginMember, FittedMember, BaselinesMember] : [OriginMember];
        Dictionary<string, JsonValue> members =
            source.Members(entry, "An object", [.. fields.Select(f => f.Name), .. extra]);

        Origin? usual = null;
        if (members.TryGetValue(OriginMember, out JsonValue origin))
            usual = ReadOrigin(origin);
        else if (entry.Kind == JsonValueKind.Object)
        {
            source.RefuseMissing(
                entry, OriginMember, $"State how the values are known: {ValueReader.Words(typeof(Origin))}.");
        }

        var item = (MachinePiece)FieldRegistry.Blank(kind);
        foreach (Field field in fields)
        {
            if (members.TryGetValue(field.Name, out JsonValue value))
                item = WithField(item, field, value, usual);
            else if (field.Required && entry.Kind == JsonValueKind.Object)
                source.RefuseMissing(entry, field.Name, $"A value is needed. {field.Sentence}");
        }

        if (item is Machine machine)
            item = WithRuns(machine, members);
        return new DraftItem(
            item with { Origins = origins },
            new ItemPlace(source.File, Row: null, entry.Pointer),
            written,
            sound: source.Findings.Count == before);
    }

    private MachinePiece WithField(MachinePiece item, Field field, JsonValue value, Origin? usual)
    {
        // Names are not known from anywhere: only what could be measured has an origin.
        bool hasOrigin = field.Shape is not (FieldShape.Text or FieldShape.Reference);
        Origin? origin = usual;
        if (hasOrigin && IsWrapped(field, value))
        {
            Dictionary<string, JsonValue> wrapper =
                source.Members(value, "An object", [ValueMember, OriginMember]);
            if (wrapper.TryGetValue(OriginMember, out JsonValue own))
                origin = ReadOrigin(own);
            else
                source.RefuseMissing(value, OriginMember, "A wrapped value states its own origin.");
            if (!wrapper.TryGetValue(ValueMember, out JsonValue inner))
            {
                source.RefuseMissing(value, ValueMember, $"A value is needed. {field.Sentence}");
                return item;
            }

            value = inner;
        }

        written[field.Name] = value.Written;
        if (JsonTokens.Take(source, field, value) is not { } taken)
            return item;
        object? read = FieldReader.Read(field, taken, source.Refuse);
        if (read is null)
            return item;
        if (hasOrigin && origin is { } known)
            origins[field.Name] = known;
        return (MachinePiece)field.Set(item, read);
    }

    // Holes are an object themselves, but the twist of a hole is never an object.
    private static bool IsWrapped(Field field, JsonValue value) => value.Kind == JsonValueKind.Object
        && (field.Shape != FieldShape.Holes
            || (value.Element.TryGetProperty(ValueMember, out JsonElement inner)
                && inner.ValueKind != JsonValueKind.Number));

    private Origin? ReadOrigin(JsonValue value)
    {
        if (!source.Is(value, JsonValueKind.String, $"One of these words: {ValueReader.Words(typeof(Origin))}"))
            return null;
        if (ValueReader.Choice(value.Written, typeof(Origin), out object? origin) is not { } refusal)
            return (Origin)origin!;
        source.Refuse(value, refusal);
        return null;
    }

    private Machine WithRuns(Machine machine, Dictionary<string, JsonValue> members)
    {
        var sets = new PartSetReader(source);
        PartSet? fitted = members.TryGetValue(FittedMember, out JsonValue set) ? sets.Read(set) : null;
        IReadOnlyList<Baseline> baselines = members.TryGetValue(BaselinesMember, out JsonValue list)
            ? new BaselineReader(source, sets, fitted, hasFitted: members.ContainsKey(FittedMember)).ReadAll(list)
            : [];
        return machine with { Fitted = fitted, Baselines = baselines };
    }
}
