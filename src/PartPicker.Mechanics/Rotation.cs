namespace PartPicker.Mechanics;

/// <summary>Turns rpm into rad/s and back: ω = n π / 30.</summary>
public static class Rotation
{
    /// <summary>ω (rad/s) of a speed (rpm).</summary>
    public static double ToRadiansPerSecond(double rpm) => rpm * (Math.PI / 30);

    /// <summary>n (rpm) of a speed (rad/s).</summary>
    public static double ToRpm(double radiansPerSecond) => radiansPerSecond * (30 / Math.PI);
}
