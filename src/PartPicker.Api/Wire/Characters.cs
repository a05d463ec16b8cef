namespace PartPicker.Api.Wire;

/// <summary>Counts characters as JSON Schema does: a picture is one, though it takes two places of a string.</summary>
internal static class Characters
{
    public static int Count(string text) => text.EnumerateRunes().Count();
}
