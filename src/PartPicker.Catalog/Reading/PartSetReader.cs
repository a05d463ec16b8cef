using System.Text.Json;
using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>A set of parts in a machine file.</summary>
internal sealed class PartSetReader(JsonSource source)
{
    /// <summary>The members of a set, as references from one also name them.</summary>
    public const string DriveSpring = "driveSpring";
    public const string Flyweight = "flyweight";
    public const string StationMasses = "stationMasses";
    public const string DrivenSpring = "drivenSpring";
    public const string Hole = "hole";
    public const string Helix = "helix";
    public const string AdjusterStep = "adjusterStep";
    public const string Shims = "shims";

    /// <summary>The members of the shims of a set.</summary>
    public const string Shim = "shim";
    public const string Count = "count";

    private static readonly string[] MemberNames =
        [DriveSpring, Flyweight, StationMasses, DrivenSpring, Hole, Helix, AdjusterStep, Shims];

    private static readonly EntryMember[] ShimMembers =
        [new(Shim, JsonValueKind.String), new(Count, JsonValueKind.Number)];

    /// <summary>No clutch takes more.</summary>
    private static readonly long MaxShims =
        (long)FieldRegistry.For(ItemKind.DriveClutch).First(f => f.Name == "shimLimit").Max;

    /// <summary>The set, with an empty text for each member that was refused; null when it is no object.</summary>
    public PartSet? Read(JsonValue value)
    {
        Dictionary<string, JsonValue> members = source.Members(value, "A set of parts as an object", MemberNames);
        if (value.Kind != JsonValueKind.Object)
            return null;
        return new PartSet(
            DriveSpring: Text(DriveSpring, ValueReader.Id),
            Flyweight: Text(Flyweight, ValueReader.Id),
            StationMasses: members.TryGetValue(StationMasses, out JsonValue masses) ? Masses(masses) : NoMasses,
            DrivenSpring: Text(DrivenSpring, ValueReader.Id),
            Hole: Text(Hole, FieldReader.StampedName),
            Helix: Text(Helix, ValueReader.Id))
        {
            AdjusterStep = members.ContainsKey(AdjusterStep) ? Text(AdjusterStep, FieldReader.StampedName) : null,
            Shims = members.TryGetValue(Shims, out JsonValue shims) ? Fitted(shims) : null,
        };

        string Text(string member, Func<string, Refusal?> check)
        {
            if (!members.TryGetValue(member, out JsonValue text))
                source.RefuseMissing(value, member, "A set names a part in every place.");
            else if (source.Is(text, JsonValueKind.String, "A text in quotes") && check(text.Written) is { } refusal)
                source.Refuse(text, refusal);
            else if (text.Kind == JsonValueKind.String)
                return text.Written;
            return "";
        }
    }

    private FittedShims? Fitted(JsonValue value)
    {
        if (JsonTokens.Entry(source, ShimMembers, value) is not { } entry)
            return null;
        Token shim = entry.Parts[0];
        Token count = entry.Parts[1];
        Refusal? badId = ValueReader.Id(shim.Text);
        if (badId is not null)
            source.Refuse(shim with { Key = null }, badId);
        if (ValueReader.Whole(count.Text, 1, MaxShims, out long number) is { } badCount)
            source.Refuse(count with { Key = null }, badCount);
        return new FittedShims(badId is null ? shim.Text : "", (int)number);
    }

    private static Dictionary<StationName, double> NoMasses => [];

    private Dictionary<StationName, double> Masses(JsonValue value)
    {
        Dictionary<StationName, double> masses = NoMasses;
        foreach ((string name, JsonValue mass) in source.Members(value, "An object of masses by station"))
        {
            Field? field = FieldRegistry.For(ItemKind.Flyweight).FirstOrDefault(f => f.Name == $"{name}Masses");
            if (field is null || ValueReader.Choice(name, typeof(StationName), out object? station) is not null)
            {
                source.Refuse(mass, new(
                    FindingCodes.UnknownMember, $"The stations are {ValueReader.Words(typeof(StationName))}."));
            }
            else if (JsonTokens.Leaf(source, mass, hasUnit: true) is { } token
                && FieldReader.Read(field, WrittenValue.Of(token), source.Refuse) is IReadOnlyList<double> and [var si])
            {
                masses[(StationName)station!] = si;
            }
        }

        return masses;
    }
}
