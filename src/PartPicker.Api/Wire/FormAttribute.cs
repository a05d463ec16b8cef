using System.Text.RegularExpressions;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>The text, or each text of the list, has a form that the API document tells.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal abstract class FormAttribute(string pattern) : Attribute
{
    public string Pattern => pattern;
}

/// <summary>The name of a number that can be explained, at any point of the longest curve.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class ExplainedFormAttribute() : FormAttribute(
    $"^({string.Join('|', ExplainedNames.Of(RequestLimits.MaxRatioPoints).Select(Regex.Escape))})$");

/// <summary>A JSON pointer to a member, no deeper than a body may be.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class PointerFormAttribute() : FormAttribute($"^(/[^/]*){{1,{RequestLimits.MaxDepth}}}$");
