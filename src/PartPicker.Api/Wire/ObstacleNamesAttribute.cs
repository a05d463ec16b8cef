using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>The text is the name of a rule or a target that may stand in the way; the API document explains each.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class ObstacleNamesAttribute : Attribute
{
    public static IEnumerable<string> Names => RuleNames.Obstacles.Select(rule => rule.Name);

    public static string Sentences => string.Join(' ', RuleNames.Obstacles.Select(rule => $"`{rule.Name}`: {rule.Meaning}"));
}
