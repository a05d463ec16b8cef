using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>What one set does on one machine.</summary>
public sealed record Prediction
{
    /// <summary>Engine speed at which the drive clutch takes the belt; null where another device starts the machine.</summary>
    public required double? EngagementRpm { get; init; }

    /// <summary>Half width of the band around it, in rpm; null where there is none.</summary>
    public double? EngagementBandRpm { get; init; }

    /// <summary>The sheave travel that decides engagement; contact unless a notch holds the flyweight back.</summary>
    public required Length EngagementTravel { get; init; }

    /// <summary>
    /// Where the drive clutch stops slipping in low gear: up to there the launch slips by design. Null where that is not
    /// reached below the rev limit, or where another device starts the machine.
    /// </summary>
    public required double? LockUpRpm { get; init; }

    /// <summary>Upshift rpm at full shift; null where it does not shift there.</summary>
    public required double? ShiftOutRpm { get; init; }

    /// <summary>Where the engine has its greatest power up to the rev limit.</summary>
    public required double PeakPowerRpm { get; init; }

    /// <summary>That power, in this air.</summary>
    public required Power PeakPower { get; init; }

    /// <summary>Torque in this air over torque at sea level.</summary>
    public required double TorqueFactor { get; init; }

    /// <summary>How the model was tied to a measured run; null: it was not.</summary>
    public required Anchoring? Anchoring { get; init; }

    /// <summary>From low gear to full shift.</summary>
    public required IReadOnlyList<ShiftPoint> Curve { get; init; }

    /// <summary>What the helix does under reverse power; null where its reverse angle is not known.</summary>
    public required ReverseClamp? Reverse { get; init; }
}

/// <summary>The cam in low gear, driving and under reverse power; springs and cam friction left out.</summary>
/// <param name="Angle">α_r, angle of the flanks that bear under reverse power.</param>
/// <param name="ClampRatio">tan α/tan α_r: clamp per torque under reverse power over that when driving.</param>
/// <param name="DrivingClamp">Cam force of the torque at the low-gear upshift; null where it does not shift there.</param>
/// <param name="Clamp">Cam force of the same torque under reverse power.</param>
public sealed record ReverseClamp(Angle Angle, double ClampRatio, Force? DrivingClamp, Force? Clamp);

/// <summary>The two factors that tie the model to a measured run.</summary>
/// <remarks>
/// a_f = (n_e,model / n_e,measured)²; a_b = Σ b_j F_d,j / Σ F_d,j² with b_j = (1 − f) a_f F_fly − F₁ at each measured
/// shift rpm.
/// </remarks>
/// <param name="FlyweightFactor">a_f, on flyweight thrust.</param>
/// <param name="ThrustFactor">a_b, on belt thrust.</param>
/// <param name="Friction">μ that was solved from the run as well; null where the profile's was kept.</param>
/// <param name="Residuals">Model less measured rpm at each measured ratio, with the factors in place.</param>
/// <param name="Warnings">Factors outside the usual range, in a person's words.</param>
public sealed record Anchoring(
    double FlyweightFactor,
    double ThrustFactor,
    double? Friction,
    IReadOnlyList<RatioRpm> Residuals,
    IReadOnlyList<string> Warnings);

/// <summary>The belt at one ratio, and the balances there.</summary>
public sealed record ShiftPoint
{
    public required double Ratio { get; init; }
    public required Length Travel { get; init; }
    public required Length OpeningTravel { get; init; }
    public required Length DriveRadius { get; init; }
    public required Length DrivenRadius { get; init; }
    public required Angle DriveWrap { get; init; }
    public required Angle DrivenWrap { get; init; }
    public required Angle HelixAngle { get; init; }
    public required Angle CamTurn { get; init; }

    /// <summary>Share of any torque that the helix alone holds on the driven clutch, its spring left out.</summary>
    public required double HelixHold { get; init; }

    /// <summary>True where the driven clutch cannot slip, whatever the torque.</summary>
    public bool HelixAloneHolds => HelixHold >= 1;

    /// <summary>Upshift less backshift rpm: how far the speed may move before the ratio does. Null where one is missing.</summary>
    public double? HysteresisRpm => Upshift?.Rpm - Backshift?.Rpm;

    /// <summary>Null: it does not shift there below the rev limit.</summary>
    public required Balance? Upshift { get; init; }

    /// <summary>Half width of the band around the upshift rpm; null where there is none.</summary>
    public double? UpshiftBandRpm { get; init; }

    /// <inheritdoc cref="Upshift"/>
    public required Balance? Backshift { get; init; }
}

/// <summary>Speed and forces where the two clutches balance at full throttle.</summary>
public sealed record Balance
{
    public required double Rpm { get; init; }
    public required Torque EngineTorque { get; init; }
    public required Power Power { get; init; }

    /// <summary>Peak power less the power here.</summary>
    public required Power PowerLost { get; init; }

    /// <summary>Closing force of the driven clutch.</summary>
    public required Force DrivenClamp { get; init; }

    /// <summary>Closing force that the belt asks of the drive clutch, a_b included.</summary>
    public required Force DriveThrust { get; init; }

    /// <summary>Closing force of the flyweights, a_f included and their friction not.</summary>
    public required Force FlyweightThrust { get; init; }

    /// <summary>Opening force of the drive spring.</summary>
    public required Force SpringForce { get; init; }

    /// <summary>Belt tensions, centrifugal part included.</summary>
    public required Force TightTension { get; init; }

    /// <inheritdoc cref="TightTension"/>
    public required Force SlackTension { get; init; }

    /// <summary>Belt tensions less the centrifugal part.</summary>
    public required Force TightTensionNet { get; init; }

    /// <inheritdoc cref="TightTensionNet"/>
    public required Force SlackTensionNet { get; init; }

    /// <summary>Arc of the driven clutch over which the tension changes.</summary>
    public required Angle ActiveArc { get; init; }

    /// <summary>That of the drive clutch; the same where both grip alike.</summary>
    public required Angle DriveActiveArc { get; init; }

    /// <summary>Wrap over active arc; below 1 the belt slips. Null: no torque, no margin to speak of.</summary>
    public required double? SlipMargin { get; init; }

    /// <summary>True where the margin is below 1.</summary>
    public required bool Slips { get; init; }

    /// <summary>True where the clamp of the driven clutch cannot carry the torque.</summary>
    public required bool DrivenSlips { get; init; }

    public required Speed BeltSpeed { get; init; }
    public required Speed VehicleSpeed { get; init; }
}
