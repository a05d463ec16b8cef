using System.Globalization;

namespace PartPicker.Api.Wire;

/// <summary>The digits of a quantity that count, so that "1 in" and "25.4 mm" are one request.</summary>
internal static class SiDigits
{
    // Conversions differ in the 16th digit; no instrument of the trade shows the 7th.
    private const string TwelveDigits = "E11";

    public static double Round(double si) =>
        double.Parse(si.ToString(TwelveDigits, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + 0.0;
}
