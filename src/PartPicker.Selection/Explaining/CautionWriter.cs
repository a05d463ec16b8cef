using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>
/// The cautions that belong beside every answer that leads to a wrench. Signal words as in ANSI Z535.4 and
/// ISO 3864-2: WARNING could kill or maim, CAUTION could injure, NOTICE is not about injury. The gravest come first.
/// </summary>
internal static class CautionWriter
{
    private const string Warning = "WARNING";
    public const string Careful = "CAUTION";
    public const string Notice = "NOTICE";

    private static readonly string[] Severity = [Warning, Careful, Notice];

    /// <summary>By signal word, the gravest first; those of one word as they came.</summary>
    public static IReadOnlyList<Caution> BySeverity(IEnumerable<Caution> cautions) =>
        [.. cautions.OrderBy(c => Array.IndexOf(Severity, c.Signal))];

    public static IReadOnlyList<Caution> For(SetUp set, Prediction prediction, MachineModel machine)
    {
        var cautions = new List<Caution>
        {
            StoredEnergy(set, machine),
            new(Warning, "Spinning sheaves and a moving belt cut and crush. Run the engine only with every guard in place and "
                + "nobody in line with the belt; stop it and let everything come to rest before you reach in."),
            new(Careful, "Mark sheaves and covers before you take them apart and put them back as marked. "
                + $"All {Words.Pieces(machine.Profile.DriveClutch.Family)} of a set must carry equal mass: a mixed set shakes the clutch apart."),
            new(Notice, "Take tightening torques only from the machine maker's service manual; it and the rules of your place stand "
                + "above this answer. The service computes; a qualified technician decides."),
        };
        if (machine.Profile.DrivenClutch.Family == DrivenFamily.TorsionAndHelix)
            cautions.Insert(1, Twist(set, machine));
        if (set.Flyweight.Body.Stations().Any(s => s.Holding == MassHolding.Rivet))
        {
            cautions.Add(new Caution(Notice, "A riveted mass is destroyed when it is taken out: have new ones at hand before you drill."));
        }

        ShiftPoint[] slipping = [.. prediction.Curve.Where(p => p.Upshift is { Slips: true })];
        if (slipping.Length > 0)
        {
            cautions.Add(new Caution(Careful,
                $"By the model the belt slips at full throttle at {slipping.Length} of {prediction.Curve.Count} ratios, "
                + $"first at {slipping[0].Ratio:0.00}: a slipping belt overheats and may come apart."));
        }

        if (prediction.Anchoring is null)
        {
            cautions.Add(new Caution(Notice,
                "This prediction is not tied to a measured run. In low gear it is qualitative: the friction of the belt alone "
                + "may move it by several hundred rpm. Measure engagement and held rpm with the fitted parts."));
        }
        else
        {
            cautions.AddRange(prediction.Anchoring.Warnings.Select(w => new Caution(Notice, w)));
        }

        cautions.AddRange(GapCautions.For(set, machine));
        cautions.AddRange(ValidityCautions.For(set, prediction, machine));
        string[] guessed = [.. machine.Profile.ClassDefaults];
        if (guessed.Length > 0)
        {
            cautions.Add(new Caution(Notice,
                $"The machine's profile rests on class defaults ({string.Join(", ", guessed)}): measure them before you trust "
                + "an absolute rpm."));
        }

        return BySeverity(cautions);
    }

    /// <summary>Why a number that is there has no band.</summary>
    public static IEnumerable<Caution> ForMissingBands(Prediction prediction)
    {
        string[] without =
        [
            .. prediction is { EngagementRpm: not null, EngagementBandRpm: null } ? ["engagement"] : Array.Empty<string>(),
            .. prediction.Curve.Where(p => p is { Upshift: not null, UpshiftBandRpm: null }).Select(p => $"ratio {p.Ratio:0.00}"),
        ];
        if (without.Length > 0)
        {
            yield return new Caution(Notice,
                $"There is no band, and so no likelihood, at {Words.List(without)}: with some inputs within their limits the set does not shift "
                + "there below the rev limit, or a spring no longer pushes.");
        }
    }

    private static Caution StoredEnergy(SetUp set, MachineModel machine)
    {
        double drive = Compressed(SpringModels.Force(set.DriveSpring)!, machine.Drivetrain.DriveSpringLength - set.Spring.ShimThickness);
        double driven = Compressed(SpringModels.Axial(set.Driven.Spring)!, machine.Drivetrain.DrivenSpringLength)
            + Twisted(SpringModels.Twist(set.Driven, machine)!, set.Driven.PreloadTwist);
        return new Caution(Warning, $"Springs store energy as fitted: the drive spring about {Words.Energy(drive)}, the driven spring about {Words.Energy(driven)}. Let loose they throw parts hard enough to kill. Release them only in a press or a captive tool whose thread stays engaged until the spring is free.");
    }

    /// <summary>∫ F dl from the installed length to where the spring is free (J).</summary>
    /// <remarks>
    /// A measured table ends before the spring is free. Beyond it the last slope goes on to zero force, though not
    /// beyond the longest spring of the trade: good enough for a caution, and for nothing else.
    /// </remarks>
    private static double Compressed(LinearCurve force, double installed)
    {
        double from = Math.Clamp(installed, force.From, force.To);
        double to = Math.Min(force.To, Math.Max(from, LongestSpringM));
        double last = force.At(to);
        double before = force.Knots.LastOrDefault(x => x < to, force.From);
        double rate = (force.At(before) - last) / (to - before);
        return force.Integral(from, to) + Tail(last, rate, Math.Max(0, LongestSpringM - to));
    }

    /// <summary>∫ T dψ from where the spring is free to the twist of the hole (J), likewise.</summary>
    private static double Twisted(LinearCurve torque, double twist)
    {
        double to = Math.Clamp(twist, torque.From, torque.To);
        double after = torque.Knots.FirstOrDefault(torque.To);
        double first = torque.At(torque.From);
        double rate = (torque.At(after) - first) / (after - torque.From);

        // The line through two torques may come out of the negative: there the spring is free.
        double from = first < 0 ? Math.Min(to, torque.From - first / rate) : torque.From;
        return torque.Integral(from, to) + Tail(Math.Max(0, first), rate, torque.From);
    }

    /// <summary>Area under a line that falls from a load to zero, over no more than a span.</summary>
    private static double Tail(double load, double rate, double span)
    {
        double length = load < rate * span ? load / rate : span;
        return (load - rate * length / 2) * length;
    }

    private const double LongestSpringM = 0.4;

    private static Caution Twist(SetUp set, MachineModel machine)
    {
        LinearCurve twist = SpringModels.Twist(set.Driven.Spring)!;
        double torque = twist.At(Math.Clamp(set.Driven.PreloadTwist, twist.From, twist.To));
        return new Caution(Warning,
            $"The driven spring's twist lets go separately from its compression, with {Words.Torque(torque)} in "
            + $"{Words.Of(set.Driven.Hole, machine)}: restrain the sheave before the helix comes free.");
    }
}
