using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Values in a person's words. Lengths in both systems, so that a sentence serves either counter.</summary>
/// <remarks>The culture of the whole service is the invariant one.</remarks>
internal static class Words
{
    public static string Length(double metres) => $"{metres * 1e3:0.0##} mm ({metres / 0.0254:0.000#} in)";

    public static string Grams(double kilograms) => $"{kilograms * 1e3:0.###} g";

    public static string Rpm(double rpm) => $"{rpm:0} rpm";

    public static string Degrees(double radians) => $"{radians * (180 / Math.PI):0.##}°";

    public static string Force(double newtons) => $"{newtons:0.#} N ({newtons / 4.4482216152605:0.#} lbf)";

    public static string Stress(double pascals) => $"{pascals / 1e6:0.#} MPa ({pascals / 6.894757293168361e6:0.#} ksi)";

    public static string Torque(double newtonMetres) =>
        $"{newtonMetres:0.#} N·m ({newtonMetres / 1.3558179483314004:0.#} lbf·ft)";

    public static string Energy(double joules) => $"{joules:0.#} J ({joules / 1.3558179483314004:0.#} ft·lbf)";

    /// <summary>"hole 2", or "setting 100" where an adjuster twists the spring.</summary>
    public static string Of(SpringHole hole, MachineModel machine) =>
        $"{(machine.Profile.DrivenClutch.HasAdjuster ? "setting" : "hole")} {hole.Name}";

    /// <summary>What a set of flyweights is made of in a clutch of this family.</summary>
    public static string Pieces(DriveFamily family) => family switch
    {
        DriveFamily.SlidingRoller => "rollers",
        DriveFamily.RollerOnAdjustableRamp => "ramps",
        _ => "arms",
    };

    /// <summary>"a", "a and b" or "a, b and c".</summary>
    public static string List(params IReadOnlyList<string> words) =>
        words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.SkipLast(1))} and {words[^1]}";

    /// <summary>The names of what is not known.</summary>
    public static string Lacking(IEnumerable<(string What, bool Known)> needed) =>
        List([.. needed.Where(n => !n.Known).Select(n => n.What)]);

    public static string Of(ItemKind kind) => Of(kind.ToString());

    public static string Of(Slot slot) => Of(slot.ToString());

    /// <summary>"DriveSpring" and "driveSpring" as "drive spring".</summary>
    public static string Of(string name) =>
        string.Concat(name.Select((c, i) => $"{(i > 0 && char.IsUpper(c) ? " " : "")}{char.ToLowerInvariant(c)}"));

    public static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
