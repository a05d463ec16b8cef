namespace PartPicker.Mechanics;

/// <summary>A drive spring with a flyweight set, computed once for every balance that it takes part in.</summary>
/// <param name="Engagement">Where the clutch takes the belt.</param>
/// <param name="ThrustPerSpeedSquared">W at each position (kg·m), a_f included.</param>
/// <param name="SpringForce">F₁ at each position (N).</param>
public sealed record DriveSide(Engagement Engagement, double[] ThrustPerSpeedSquared, double[] SpringForce);
