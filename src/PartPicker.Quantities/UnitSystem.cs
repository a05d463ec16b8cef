namespace PartPicker.Quantities;

/// <summary>The two systems that answers are written in.</summary>
public enum UnitSystem
{
    Metric,
    Inch,
}
