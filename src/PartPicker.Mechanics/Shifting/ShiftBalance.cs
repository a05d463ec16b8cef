namespace PartPicker.Mechanics;

/// <summary>Speed and loads where both clutches balance at full throttle. SI units; rpm where named.</summary>
/// <param name="Rpm">Engine speed n.</param>
/// <param name="EngineTorque">Q in this air.</param>
/// <param name="Power">Q ω.</param>
/// <param name="PowerLost">Greatest power up to the rev limit, in the same air, less Q ω.</param>
/// <param name="DrivenClamp">F_s.</param>
/// <param name="DriveThrust">a_b F_d: what the belt asks of the drive clutch.</param>
/// <param name="FlyweightThrust">a_f ω² W, before friction.</param>
/// <param name="SpringForce">F₁.</param>
/// <param name="Belt">Net tensions, active arc and slip margin.</param>
/// <param name="CentrifugalTension">T_c, on top of both net tensions.</param>
/// <param name="BeltSpeed">v = ω R₁.</param>
/// <param name="VehicleSpeed">ω R_tyre / (i · final drive).</param>
public readonly record struct ShiftBalance(
    double Rpm,
    double EngineTorque,
    double Power,
    double PowerLost,
    double DrivenClamp,
    double DriveThrust,
    double FlyweightThrust,
    double SpringForce,
    BeltLoad Belt,
    double CentrifugalTension,
    double BeltSpeed,
    double VehicleSpeed)
{
    /// <summary>True where the least margin is below 1; false where there is no torque to slip under.</summary>
    public bool Slips => Belt.SlipMargin < 1;
}

/// <summary>Which way the ratio is moving: the frictions of flyweight and cam turn with it.</summary>
public enum ShiftDirection
{
    Upshift,
    Backshift,
}

/// <summary>The two factors that tie the model to a measured run: on flyweight thrust and on belt thrust.</summary>
/// <param name="Flyweight">a_f.</param>
/// <param name="Thrust">a_b.</param>
public readonly record struct AnchorFactors(double Flyweight, double Thrust)
{
    /// <summary>No measured run: both factors are 1.</summary>
    public static readonly AnchorFactors None = new(1, 1);
}
