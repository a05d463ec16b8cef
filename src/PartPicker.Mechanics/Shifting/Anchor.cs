namespace PartPicker.Mechanics;

/// <summary>Ties the model to a measured run by one factor on flyweight thrust and one on belt thrust.</summary>
/// <remarks>
/// a_f = (n_e,model / n_e,measured)². At each measured shift rpm b_j = (1 − f) a_f ω² W − F₁ and
/// a_b = Σ b_j F_d,j / Σ F_d,j² (least squares; one point is met exactly). Common practice, no source.
/// </remarks>
public static class Anchor
{
    /// <summary>Usual range of both factors; outside it the profile, the parts or the measurement is wrong.</summary>
    public const double LeastUsualFactor = 0.7;

    /// <inheritdoc cref="LeastUsualFactor"/>
    public const double GreatestUsualFactor = 1.4;

    /// <summary>The factors that make the measured set engage and shift as measured.</summary>
    /// <param name="unanchored">The machine in the air of the run, without factors, at the measured ratios.</param>
    /// <param name="drive">The drive side of the run, without factors.</param>
    /// <param name="driven">The driven side of the run.</param>
    /// <param name="frictionShare">f.</param>
    /// <param name="engagementRpm">n_e as measured.</param>
    /// <param name="shiftRpm">Shift rpm as measured at each position, one or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The engagement rpm is not positive, or a shift rpm lies beyond the engine's table.
    /// </exception>
    /// <exception cref="ArgumentException">Not one shift rpm for each position.</exception>
    public static AnchorFactors Solve(
        ShiftModel unanchored,
        DriveSide drive,
        DrivenSide driven,
        double frictionShare,
        double engagementRpm,
        IReadOnlyList<double> shiftRpm)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(engagementRpm);
        if (shiftRpm.Count == 0 || shiftRpm.Count != unanchored.Positions.Count)
            throw new ArgumentException("A measured run needs one shift rpm for each position.", nameof(shiftRpm));
        double flyweight = Math.Pow(drive.Engagement.Rpm / engagementRpm, 2);
        double thrustSquares = 0;
        double products = 0;
        for (int j = 0; j < shiftRpm.Count; j++)
        {
            double speed = Rotation.ToRadiansPerSecond(shiftRpm[j]);
            double available = (1 - frictionShare) * flyweight * drive.ThrustPerSpeedSquared[j] * speed * speed
                - drive.SpringForce[j];
            double asked = unanchored.UpshiftBeltThrust(shiftRpm[j], driven, j);
            products += available * asked;
            thrustSquares += asked * asked;
        }

        return new AnchorFactors(flyweight, products / thrustSquares);
    }
}
