namespace PartPicker.Api.Wire;

/// <summary>The belt at one ratio, and the balances there.</summary>
internal sealed record ShiftPointWire
{
    /// <summary>Driven pitch radius over drive pitch radius.</summary>
    public required double Ratio { get; init; }

    /// <summary>Travel of the drive sheave from rest.</summary>
    public required QuantityWire Travel { get; init; }

    /// <summary>Opening travel of the driven sheave from low gear.</summary>
    public required QuantityWire OpeningTravel { get; init; }

    /// <summary>Pitch radius of the belt on the drive clutch.</summary>
    public required QuantityWire DriveRadius { get; init; }

    /// <summary>Pitch radius of the belt on the driven clutch.</summary>
    public required QuantityWire DrivenRadius { get; init; }

    /// <summary>Wrap of the belt on the drive clutch.</summary>
    public required QuantityWire DriveWrap { get; init; }

    /// <summary>Wrap of the belt on the driven clutch.</summary>
    public required QuantityWire DrivenWrap { get; init; }

    /// <summary>Helix angle from the plane of rotation.</summary>
    public required QuantityWire HelixAngle { get; init; }

    /// <summary>Turn of the cam from low gear.</summary>
    public required QuantityWire CamTurn { get; init; }

    /// <summary>Share of any torque that the helix alone holds on the driven clutch, its spring left out.</summary>
    public required double HelixHold { get; init; }

    /// <summary>True where that is 1 or more: the driven clutch cannot slip there.</summary>
    public required bool HelixAloneHolds { get; init; }

    /// <summary>Upshift less backshift engine speed; null where one is missing.</summary>
    public required double? HysteresisRpm { get; init; }

    /// <summary>Where the clutches balance while it shifts up; null where they do not.</summary>
    public required BalanceWire? Upshift { get; init; }

    /// <summary>
    /// Half width of the band around the upshift rpm, from the tolerances of springs, masses, belt friction and torque and
    /// from what the model misses of its measured run: about 19 in 20 machines lie within. Null where there is
    /// none; a caution says why.
    /// </summary>
    public required double? UpshiftBandRpm { get; init; }

    /// <summary>Where the clutches balance while it shifts back; null where they do not.</summary>
    public required BalanceWire? Backshift { get; init; }

    /// <summary>Why a balance is missing; null when both are there.</summary>
    public required string? Reason { get; init; }
}
