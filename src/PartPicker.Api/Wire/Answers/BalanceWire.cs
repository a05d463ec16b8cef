namespace PartPicker.Api.Wire;

/// <summary>Speed and forces where the two clutches balance at full throttle.</summary>
internal sealed record BalanceWire
{
    /// <summary>Engine speed.</summary>
    public required double Rpm { get; init; }

    /// <summary>Torque of the engine.</summary>
    public required QuantityWire EngineTorque { get; init; }

    /// <summary>Power of the engine.</summary>
    public required QuantityWire Power { get; init; }

    /// <summary>Greatest power in this air less the power here.</summary>
    public required QuantityWire PowerLost { get; init; }

    /// <summary>Closing force of the driven clutch.</summary>
    public required QuantityWire DrivenClamp { get; init; }

    /// <summary>Closing force that the belt asks of the drive clutch.</summary>
    public required QuantityWire DriveThrust { get; init; }

    /// <summary>Closing force of the flyweights.</summary>
    public required QuantityWire FlyweightThrust { get; init; }

    /// <summary>Opening force of the drive spring.</summary>
    public required QuantityWire SpringForce { get; init; }

    /// <summary>Tension of the tight strand, centrifugal part included.</summary>
    public required QuantityWire TightTension { get; init; }

    /// <summary>Tension of the slack strand, centrifugal part included.</summary>
    public required QuantityWire SlackTension { get; init; }

    /// <summary>Tension of the tight strand less the centrifugal part.</summary>
    public required QuantityWire TightTensionNet { get; init; }

    /// <summary>Tension of the slack strand less the centrifugal part.</summary>
    public required QuantityWire SlackTensionNet { get; init; }

    /// <summary>The part of the driven clutch's wrap over which the tension changes.</summary>
    public required QuantityWire ActiveArc { get; init; }

    /// <summary>That of the drive clutch; the same where both grip alike.</summary>
    public required QuantityWire DriveActiveArc { get; init; }

    /// <summary>Wrap over active arc; below 1 the belt slips. Null without torque.</summary>
    public required double? SlipMargin { get; init; }

    /// <summary>True when the belt slips.</summary>
    public required bool Slips { get; init; }

    /// <summary>Speed of the belt.</summary>
    public required QuantityWire BeltSpeed { get; init; }

    /// <summary>Speed of the vehicle.</summary>
    public required QuantityWire VehicleSpeed { get; init; }
}
