using System.Text.Json;
using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>A member of an entry that is an object in JSON.</summary>
internal sealed record EntryMember(string Name, JsonValueKind Kind, bool Required = true);

/// <summary>The members of the entries of a list, by the names that CSV and JSON share.</summary>
internal static class EntryMembers
{
    public const string Sheave = "sheave";
    public const string Helix = "helix";
    public const string TwistDeg = "twistDeg";
    public const string Clutch = "clutch";
    public const string FromYear = "fromYear";
    public const string ToYear = "toYear";
    public const string Part = "part";
    public const string Packs = "packs";

    public static IReadOnlyList<EntryMember> Of(FieldShape shape) => shape switch
    {
        FieldShape.Holes =>
        [
            new(Sheave, JsonValueKind.String),
            new(Helix, JsonValueKind.String),
            new(TwistDeg, JsonValueKind.Number),
        ],
        FieldShape.ClutchFits =>
        [
            new(Clutch, JsonValueKind.String),
            new(FromYear, JsonValueKind.Number, Required: false),
            new(ToYear, JsonValueKind.Number, Required: false),
        ],
        FieldShape.KitLines =>
        [
            new(Part, JsonValueKind.String),
            new(Packs, JsonValueKind.Number, Required: false),
        ],
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "Its entries have no members."),
    };
}
