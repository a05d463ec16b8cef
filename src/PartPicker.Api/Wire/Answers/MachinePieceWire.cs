using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>A piece of a machine profile; several machines may share it.</summary>
internal sealed record MachinePieceWire
{
    /// <summary>engine, driveClutch, drivenClutch, belt, gearing or machine.</summary>
    [WordsOf(typeof(ItemKind))]
    public required string Kind { get; init; }

    /// <summary>Unique in the catalog.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }

    /// <summary>Its values by name; what is not known is not listed.</summary>
    public required IReadOnlyDictionary<string, FieldValueWire> Fields { get; init; }

    /// <summary>Where each value came from, by the same names: measured, drawing, brochure or classDefault.</summary>
    public required IReadOnlyDictionary<string, string> Origins { get; init; }
}
