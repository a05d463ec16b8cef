using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>Writes parts.</summary>
internal static class PartWriter
{
    public static PartWire Write(Part part, AnswerWriter writer) => new()
    {
        CatalogRevision = writer.Catalog.Revision,
        Id = part.Id,
        Kind = WireJson.Word(part.Kind),
        Name = part.Name,
        Fields = FieldWriter.Write(part, writer),
    };
}
