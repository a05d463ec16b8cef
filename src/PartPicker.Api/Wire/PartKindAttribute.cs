using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>The text is one of the kinds that can be bought, which are some of the kinds of a catalog.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class PartKindAttribute() : WordsOfAttribute(typeof(ItemKind))
{
    public override IEnumerable<string> Words => PartListing.Kinds.Select(kind => WireJson.Word(kind));
}
