namespace PartPicker.Api.Wire;

/// <summary>The text is one of the words of an enum; the API document lists them.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal class WordsOfAttribute(Type words) : Attribute
{
    public virtual IEnumerable<string> Words => Enum.GetValues(words).Cast<Enum>().Select(WireJson.Word);
}
