namespace PartPicker.Mechanics;

/// <summary>Turns rpm into rad/s and back: ω = n π / 30.</summary>
public static class Rotation
{
    public static double ToRadiansPerSecond(double rpm) => rpm * (Math.PI / 30);

    public static double ToRpm(double radiansPerSecond) => radiansPerSecond * (30 / Math.PI);
}
