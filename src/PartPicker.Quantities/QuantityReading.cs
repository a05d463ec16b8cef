namespace PartPicker.Quantities;

/// <summary>A value in SI, or the sentence that says what is wrong and how to write it.</summary>
/// <param name="Value">In SI; NaN where there is a problem, so that it cannot be used unseen.</param>
/// <param name="Problem">Null when the text was read.</param>
public readonly record struct QuantityReading(double Value, string? Problem)
{
    /// <summary>True where a number was read and its unit is what is missing.</summary>
    public bool UnitMissing { get; init; }

    internal static QuantityReading Refused(string problem) => new(double.NaN, problem);
}
