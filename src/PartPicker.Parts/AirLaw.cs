namespace PartPicker.Parts;

/// <summary>Which published correction scales torque with air.</summary>
public enum AirLaw
{
    /// <summary>SAE J1349 (the default).</summary>
    SaeJ1349,

    /// <summary>ISO 1585.</summary>
    Iso1585,
}
