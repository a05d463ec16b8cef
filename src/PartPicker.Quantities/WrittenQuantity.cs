namespace PartPicker.Quantities;

/// <summary>A number and its unit, as they leave.</summary>
public sealed record WrittenQuantity(double Value, string Unit);
