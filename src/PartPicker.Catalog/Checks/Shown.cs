namespace PartPicker.Catalog;

/// <summary>Computed values in the sentence of a finding, in both unit systems.</summary>
internal static class Shown
{
    public static string Length(double metres) => $"{metres * 1e3:0.0##} mm ({metres / 0.0254:0.000#} in)";

    public static string Mass(double kilograms) => $"{kilograms * 1e3:0.###} g";
}
