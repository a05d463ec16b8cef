namespace PartPicker.Mechanics;

/// <summary>Everything of a machine that the parts do not change. SI units, angles in rad.</summary>
public sealed record Drivetrain
{
    /// <summary>The belt's path from contact to full shift.</summary>
    public required BeltPath Belt { get; init; }

    /// <summary>Torque at sea level and rev limit.</summary>
    public required EngineTorque Engine { get; init; }

    /// <summary>β, half of the groove angle.</summary>
    public required double GrooveHalfAngle { get; init; }

    /// <summary>μ, friction of belt on sheave, where it is one over the whole groove.</summary>
    public required double BeltFriction { get; init; }

    /// <summary>μ over pitch radius (m), covering every radius of the belt; null: <see cref="BeltFriction"/> everywhere.</summary>
    public LinearCurve? BeltFrictionByRadius { get; init; }

    /// <summary>η, belt efficiency.</summary>
    public required double BeltEfficiency { get; init; }

    /// <summary>m_b, belt mass per metre.</summary>
    public required double BeltMassPerLength { get; init; }

    /// <summary>x_c, travel at contact.</summary>
    public required double ContactTravel { get; init; }

    /// <summary>x_f, travel at full shift.</summary>
    public required double FullShiftTravel { get; init; }

    /// <summary>l₁, length of the drive spring at rest.</summary>
    public required double DriveSpringLength { get; init; }

    /// <summary>l₂, length of the driven spring in low gear.</summary>
    public required double DrivenSpringLength { get; init; }

    /// <summary>f, share of flyweight thrust lost to friction.</summary>
    public required double FlyweightFrictionShare { get; init; }

    /// <summary>r_c, radius of the cam track.</summary>
    public required double CamRadius { get; init; }

    /// <summary>q, share of the belt torque that passes the cam.</summary>
    public required double CamTorqueShare { get; init; }

    /// <summary>φ, friction angle of the cam.</summary>
    public required double CamFrictionAngle { get; init; }

    /// <summary>How the drive sheave carries the belt.</summary>
    public required DriveThrustForm ThrustForm { get; init; }

    /// <summary>Rolling radius of the tyre.</summary>
    public required double TyreRadius { get; init; }

    /// <summary>Turns of the driven clutch per turn of the wheel.</summary>
    public required double FinalDrive { get; init; }

    /// <summary>Highest speed of the engine, in rpm.</summary>
    public double RevLimitRpm => Engine.RevLimitRpm;

    /// <summary>μ at a pitch radius (m).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The radius lies outside the points of the curve.</exception>
    public double FrictionAt(double radius) => BeltFrictionByRadius?.At(radius) ?? BeltFriction;
}
