namespace PartPicker.Selection;

/// <summary>What the model does not know, in sentences that stand beside every prediction.</summary>
public static class ModelLimits
{
    public static IReadOnlyList<string> Sentences { get; } =
    [
        "Steady full throttle only: launch, acceleration and part throttle are not computed.",
        "The belt neither heats nor wears, and the grooves are not worn.",
        "One friction holds over all radii unless the belt states it by radius; traction falls on small radii, so the slip margin in low gear is flattering.",
        "Friction along the radius of the sheaves is left out; it would widen the gap between upshift and backshift.",
        "Tyre, gearing and load move only the speed axis, not the rpm at steady full throttle.",
        "A prediction that is not anchored to a measured run is qualitative in low gear.",
    ];
}
