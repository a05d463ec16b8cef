namespace PartPicker.Mechanics;

/// <summary>Where the belt runs at one travel of the drive sheave. Lengths in m, angles in rad.</summary>
/// <param name="Travel">x, travel of the drive sheave from rest.</param>
/// <param name="DriveRadius">R₁, pitch radius on the drive clutch.</param>
/// <param name="DrivenRadius">R₂, pitch radius on the driven clutch.</param>
/// <param name="DriveWrap">θ₁, wrap on the drive clutch.</param>
/// <param name="DrivenWrap">θ₂, wrap on the driven clutch.</param>
/// <param name="OpeningTravel">y, opening travel of the driven sheave from low gear.</param>
public readonly record struct BeltPosition(
    double Travel,
    double DriveRadius,
    double DrivenRadius,
    double DriveWrap,
    double DrivenWrap,
    double OpeningTravel)
{
    /// <summary>i = R₂ / R₁.</summary>
    public double Ratio => DrivenRadius / DriveRadius;
}

/// <summary>
/// A belt of constant length on two sheaves, of which one half moves: L = 2C cos γ + π(R₁ + R₂) + 2γ(R₂ − R₁),
/// sin γ = (R₂ − R₁)/C.
/// </summary>
/// <remarks>
/// θ₁ = π − 2γ, θ₂ = π + 2γ; R₁(x) = R₁min + (x − x_c)/(2 tan β); y = (R₂max − R₂) 2 tan β with R₂max = R₂(x_c).
/// The exact length of an open belt; the textbook's short form differs by 0.1 % at a ratio of 3.
/// Source: [KG] ch. 11; [JIN] ch. 21.
/// </remarks>
public sealed class BeltPath
{
    private const int MaxSteps = 50;
    private readonly double centreDistance;
    private readonly double pitchLength;
    private readonly double contactRadius;
    private readonly double contactTravel;
    private readonly double twiceTan;
    private readonly double contactDrivenRadius;

    /// <param name="centreDistance">C (m).</param>
    /// <param name="pitchLength">L (m).</param>
    /// <param name="contactRadius">R₁min, pitch radius on the drive clutch at contact (m).</param>
    /// <param name="contactTravel">x_c, travel at contact (m).</param>
    /// <param name="halfAngle">β, half of the groove angle (rad).</param>
    /// <exception cref="ArgumentException">No open belt of that length runs on these sheaves.</exception>
    public BeltPath(
        double centreDistance, double pitchLength, double contactRadius, double contactTravel, double halfAngle)
    {
        this.centreDistance = centreDistance;
        this.pitchLength = pitchLength;
        this.contactRadius = contactRadius;
        this.contactTravel = contactTravel;
        twiceTan = 2 * Math.Tan(halfAngle);
        contactDrivenRadius = DrivenRadius(contactRadius);
    }

    /// <summary>Exact length of an open belt (m) on two pitch radii (m) at a centre distance (m).</summary>
    /// <exception cref="ArgumentException">The radii differ by the centre distance or more.</exception>
    public static double Length(double firstRadius, double secondRadius, double centreDistance)
    {
        double sine = (secondRadius - firstRadius) / centreDistance;
        if (!(Math.Abs(sine) < 1))
            throw new ArgumentException("The radii differ by the centre distance or more: no belt runs there.");
        double gamma = Math.Asin(sine);
        return 2 * centreDistance * Math.Cos(gamma)
            + Math.PI * (firstRadius + secondRadius)
            + 2 * gamma * (secondRadius - firstRadius);
    }

    /// <summary>The belt at a travel x (m) at or beyond contact; below contact there is no ratio.</summary>
    /// <exception cref="ArgumentException">The belt is too short or too long to run there.</exception>
    public BeltPosition AtTravel(double travel) =>
        At(travel, contactRadius + (travel - contactTravel) / twiceTan);

    /// <summary>The belt at a ratio i = R₂/R₁; the travel that gives it may lie below contact.</summary>
    /// <exception cref="ArgumentException">No radii give this ratio with this belt.</exception>
    public BeltPosition AtRatio(double ratio)
    {
        // dL/dR₁ along R₂ = i R₁ is θ₁ + i θ₂: Newton on the length, from the length of a belt without slant.
        double r1 = (pitchLength - 2 * centreDistance) / (Math.PI * (1 + ratio));
        for (int step = 0; step < MaxSteps; step++)
        {
            double difference = (ratio - 1) * r1;
            double gamma = Math.Asin(difference / centreDistance);
            double slope = Math.PI - 2 * gamma + ratio * (Math.PI + 2 * gamma);
            double change = (Length(r1, ratio * r1, centreDistance) - pitchLength) / slope;
            r1 -= change;
            if (Math.Abs(change) <= 1e-15)
                break;
        }

        return At(contactTravel + (r1 - contactRadius) * twiceTan, r1);
    }

    /// <summary>K positions evenly spaced by ratio between two travels (m), both ends included.</summary>
    /// <param name="fromTravel">x at the first position.</param>
    /// <param name="toTravel">x at the last.</param>
    /// <param name="count">K, 2 or more.</param>
    /// <exception cref="ArgumentException">Fewer than two positions, or the belt cannot run at one.</exception>
    public BeltPosition[] EvenlyByRatio(double fromTravel, double toTravel, int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 2);
        BeltPosition first = AtTravel(fromTravel);
        BeltPosition last = AtTravel(toTravel);
        var positions = new BeltPosition[count];
        for (int j = 0; j < count; j++)
            positions[j] = AtRatio(first.Ratio + j * (last.Ratio - first.Ratio) / (count - 1));
        positions[0] = first;
        positions[^1] = last;
        return positions;
    }

    private BeltPosition At(double travel, double r1)
    {
        double r2 = DrivenRadius(r1);
        double gamma = Math.Asin((r2 - r1) / centreDistance);
        return new BeltPosition(
            travel, r1, r2, Math.PI - 2 * gamma, Math.PI + 2 * gamma, (contactDrivenRadius - r2) * twiceTan);
    }

    /// <summary>Radii at contact and at full shift (m); that of the driven clutch is null where the belt does not run there.</summary>
    /// <param name="centreDistance">C (m).</param>
    /// <param name="pitchLength">L (m).</param>
    /// <param name="contactRadius">R₁min (m).</param>
    /// <param name="shiftTravel">x_f − x_c (m).</param>
    /// <param name="halfAngle">β (rad).</param>
    public static IEnumerable<(double Drive, double? Driven)> Ends(
        double centreDistance, double pitchLength, double contactRadius, double shiftTravel, double halfAngle) =>
        from drive in new[] { contactRadius, contactRadius + shiftTravel / (2 * Math.Tan(halfAngle)) }
        select (drive, DrivenRadius(drive, pitchLength, centreDistance));

    private double DrivenRadius(double r1) => DrivenRadius(r1, pitchLength, centreDistance) ?? throw new ArgumentException(
        $"A belt of pitch length {pitchLength:0.####} m does not run at a drive radius of {r1:0.####} m "
        + $"with shafts {centreDistance:0.####} m apart.");

    /// <summary>R₂ (m) of an open belt of length L on a drive radius R₁ with shafts C apart (m); null when none runs there.</summary>
    /// <remarks>L as in <see cref="Length"/>, solved for R₂. Source: [KG] ch. 11.</remarks>
    private static double? DrivenRadius(double r1, double pitchLength, double centreDistance)
    {
        // dL/dR₂ = θ₂ is positive and L is convex in R₂: Newton closes in from above after its first step.
        double r2 = (pitchLength - 2 * centreDistance) / Math.PI - r1;
        for (int step = 0; step < MaxSteps; step++)
        {
            double sine = (r2 - r1) / centreDistance;
            if (!(Math.Abs(sine) < 1))
                break;
            double change = (Length(r1, r2, centreDistance) - pitchLength) / (Math.PI + 2 * Math.Asin(sine));
            r2 -= change;
            if (Math.Abs(change) <= 1e-15)
                break;
        }

        if (!(r1 > 0 && r2 > 0) || !(Math.Abs(r2 - r1) < centreDistance)
            || Math.Abs(Length(r1, r2, centreDistance) - pitchLength) > 1e-9)
        {
            return null;
        }

        return r2;
    }
}
