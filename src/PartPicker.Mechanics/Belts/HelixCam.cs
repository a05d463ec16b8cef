using UnitsNet;

namespace PartPicker.Mechanics;

/// <summary>The torque cam of the driven clutch: a helix angle over opening travel, and the cam's turn.</summary>
/// <remarks>
/// α(y): straight lines in y between points, constant outside them; α from the plane of rotation. Over a piece
/// of constant angle ΔΘ = Δy/(r_c tan α); over one of slope b = dα/dy ΔΘ = ln(sin α₂/sin α₁)/(r_c b). Θ(0) = 0.
/// Lengths in m, angles in rad. Source: virtual work of an inclined plane wound on a cylinder; [KG] ch. 10 for
/// the plane with friction.
/// </remarks>
public sealed class HelixCam
{
    private readonly (double Travel, double Angle)[] points;
    private readonly double camRadius;

    /// <param name="points">
    /// Opening travel y (m) and helix angle α (rad), by strictly rising y; one point is a straight helix.
    /// </param>
    /// <param name="camRadius">r_c (m).</param>
    /// <exception cref="ArgumentException">
    /// No point, y not rising, an angle outside 0 to π/2, or a radius not positive.
    /// </exception>
    public HelixCam(IEnumerable<(double Travel, double Angle)> points, double camRadius)
    {
        this.points = [.. points];
        this.camRadius = camRadius;
        if (this.points.Length == 0 || this.points.Any(p => !(p.Angle > 0 && p.Angle < Math.PI / 2)))
            throw new ArgumentException("A helix needs angles between 0 and 90 degrees.", nameof(points));
        if (this.points.Zip(this.points.Skip(1)).Any(pair => !(pair.Second.Travel > pair.First.Travel)))
            throw new ArgumentException("The travels of a helix must rise strictly.", nameof(points));
        if (!(camRadius > 0))
            throw new ArgumentException("The cam radius must be positive.", nameof(camRadius));
    }

    /// <summary>
    /// Axial force of a torque on the cam: F = T/(r_c tan(α ∓ φ)), − where the torque is overcome, + where it drives.
    /// </summary>
    /// <param name="torque">T, torque on the cam.</param>
    /// <param name="camRadius">r_c, radius of the cam track.</param>
    /// <param name="helixAngle">α, from the plane of rotation.</param>
    /// <param name="signedFriction">−φ where the sheave is forced open (upshift), +φ where it closes.</param>
    /// <remarks>Valid for 0 &lt; α ∓ φ &lt; 90°. Source: [KG] ch. 10, the power screw raised and lowered.</remarks>
    public static Force Thrust(Torque torque, Length camRadius, Angle helixAngle, Angle signedFriction) =>
        Force.FromNewtons(torque.NewtonMeters
            / (camRadius.Meters * Math.Tan(helixAngle.Radians + signedFriction.Radians)));

    /// <summary>Least and greatest angle (rad) between low gear and an opening travel (m).</summary>
    public (double Least, double Greatest) AngleRange(double openingTravel)
    {
        double[] angles =
        [
            Angle(0),
            Angle(openingTravel),
            .. points.Where(p => p.Travel > 0 && p.Travel < openingTravel).Select(p => p.Angle),
        ];
        return (angles.Min(), angles.Max());
    }

    /// <summary>α (rad) at an opening travel (m).</summary>
    public double Angle(double openingTravel)
    {
        if (openingTravel <= points[0].Travel)
            return points[0].Angle;
        for (int i = 1; i < points.Length; i++)
        {
            (double y0, double a0) = points[i - 1];
            (double y1, double a1) = points[i];
            if (openingTravel <= y1)
                return a0 + (openingTravel - y0) * (a1 - a0) / (y1 - y0);
        }

        return points[^1].Angle;
    }

    /// <summary>Θ, turn of the cam (rad) from low gear to an opening travel (m) of 0 or more.</summary>
    public double Turn(double openingTravel)
    {
        double turn = 0;
        double from = 0;
        IEnumerable<double> inside = points.Select(p => p.Travel).Where(y => y > 0 && y < openingTravel);
        foreach (double end in inside.Append(openingTravel))
        {
            turn += Piece(from, end);
            from = end;
        }

        return turn;
    }

    private double Piece(double from, double to)
    {
        if (to <= from)
            return 0;
        double a = Angle(from);
        double b = Angle(to);
        double straight = (to - from) / camRadius;

        // ln(sin b/sin a) = 2 artanh(tan((b−a)/2)/tan((a+b)/2)), which keeps its digits where a and b are close.
        return a == b
            ? straight / Math.Tan(a)
            : straight * 2 * Math.Atanh(Math.Tan((b - a) / 2) / Math.Tan((a + b) / 2)) / (b - a);
    }
}
