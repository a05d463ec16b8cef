namespace PartPicker.Mechanics;

/// <summary>How the end coils of a compression spring are made, as far as coils, solid length and pitch go.</summary>
/// <remarks>Source: [SHI] Table 10-1.</remarks>
/// <param name="DeadCoils">N_e, coils that do not deflect.</param>
/// <param name="Ground">True where the ends are ground flat.</param>
/// <param name="EndWires">Wires of the length that belong to the ends and not to the pitch.</param>
public sealed record CoilEnds(int DeadCoils, bool Ground, int EndWires)
{
    /// <summary>Cut off, not bent flat.</summary>
    public static readonly CoilEnds Open = new(0, Ground: false, 1);
    /// <summary>Cut off and ground flat.</summary>
    public static readonly CoilEnds OpenGround = new(1, Ground: true, 0);
    /// <summary>Last coil bent flat on the one before: squared.</summary>
    public static readonly CoilEnds Closed = new(2, Ground: false, 3);
    /// <summary>Squared and ground flat.</summary>
    public static readonly CoilEnds ClosedGround = new(2, Ground: true, 2);

    // Open ground ends climb over one coil more than deflects.
    internal int ClimbingDeadCoils => this == OpenGround ? 1 : 0;
}
