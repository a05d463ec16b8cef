namespace PartPicker.Mechanics;

/// <summary>A span within which a relation, or what is usual, holds.</summary>
/// <param name="Key">Stable name.</param>
/// <param name="Quantity">What is measured, in words.</param>
/// <param name="Least">Least value, in <paramref name="Unit"/>; −∞ where there is none.</param>
/// <param name="Greatest">Greatest value, likewise.</param>
/// <param name="Unit">Unit of both; empty for a bare number.</param>
/// <param name="Why">What is wrong outside.</param>
/// <param name="Source">Its source, by the keys of docs/sources.md, or that there is none.</param>
public sealed record ValidRange(
    string Key, string Quantity, double Least, double Greatest, string Unit, string Why, string Source)
{
    // The same value in inches and in millimetres differs in its last digit.
    private const double Play = 1e-9;

    /// <summary>The span in words.</summary>
    public string Span => (double.IsInfinity(Least), double.IsInfinity(Greatest)) switch
    {
        (true, _) => $"up to {Greatest:0.###}{Suffix}",
        (_, true) => $"{Least:0.###}{Suffix} and more",
        _ => $"{Least:0.###} to {Greatest:0.###}{Suffix}",
    };

    private string Suffix => Unit is "" or "°" ? Unit : $" {Unit}";

    /// <summary>True where the value, in the unit of the range, lies within; never for NaN.</summary>
    public bool Holds(double value) =>
        value >= Least - Play * Math.Abs(Least) && value <= Greatest + Play * Math.Abs(Greatest);
}
