using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What can be said of a part by field name: as stated, or computed from what is stated.</summary>
public static class PartFacts
{
    private static readonly Dictionary<(ItemKind, string), Func<Part, double?>> Computed = new()
    {
        [(ItemKind.DriveSpring, "rate")] = p => SpringModels.ComputedRate((DriveSpring)p)?.NewtonsPerMeter,
        [(ItemKind.DriveSpring, "freeLength")] = p => SpringModels.Force((DriveSpring)p)?.To,
        [(ItemKind.DriveSpring, "solidLength")] = p => SpringModels.SolidLength((DriveSpring)p)?.Meters,
        [(ItemKind.DrivenSpring, "rate")] = p => SpringModels.AxialRate((DrivenSpring)p),
        [(ItemKind.DrivenSpring, "twistRate")] = p => SpringModels.TwistRate((DrivenSpring)p),
        [(ItemKind.DrivenSpring, "insideDiameter")] = p => DrivenSpringRules.InsideAtRest((DrivenSpring)p),
    };

    /// <summary>The number of a field in SI: stated or, for a few fields of springs, computed; null when not known.</summary>
    public static double? Number(Part part, Field field) => field.Get(part) switch
    {
        double number => number,
        int count => count,
        _ => ComputedNumber(part, field.Name),
    };

    /// <summary>What a field that the part does not state comes to by computation; null when it cannot be computed.</summary>
    public static double? ComputedNumber(Part part, string field) =>
        Computed.TryGetValue((part.Kind, field), out Func<Part, double?>? compute) ? compute(part) : null;

    /// <summary>The names of the fields that are computed where a part of this kind does not state them.</summary>
    public static IEnumerable<string> ComputedFields(ItemKind kind) =>
        Computed.Keys.Where(k => k.Item1 == kind).Select(k => k.Item2);

    /// <summary>The word of a choice, text or reference field; null when not stated.</summary>
    public static string? Word(Part part, Field field) => field.Get(part) switch
    {
        string text => text,
        Enum choice => Words.Camel(choice.ToString()),
        _ => null,
    };
}
