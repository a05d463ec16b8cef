using System.Globalization;
using PartPicker.Api.Wire;

namespace PartPicker.Api.CommandLine;

/// <summary>Prices for people.</summary>
internal static class Money
{
    // ISO 4217 gives most currencies two decimals; these have none, three or four.
    private static readonly string[] NoDecimals =
    [
        "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "UYI", "VND", "VUV", "XAF",
        "XOF", "XPF",
    ];

    private static readonly string[] ThreeDecimals = ["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"];
    private static readonly string[] FourDecimals = ["CLF", "UYW"];

    /// <summary>As in "EUR 24.50"; "price not known" where it is not.</summary>
    public static string Text(PriceWire? price)
    {
        if (price is null)
            return "not known";
        int decimals = Decimals(price.Currency);
        decimal amount = price.AmountMinor / (decimal)Math.Pow(10, decimals);
        return $"{price.Currency} {amount.ToString($"F{decimals}", CultureInfo.InvariantCulture)}";
    }

    private static int Decimals(string currency) =>
        NoDecimals.Contains(currency) ? 0
        : ThreeDecimals.Contains(currency) ? 3
        : FourDecimals.Contains(currency) ? 4
        : 2;
}
