using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Builds a predictor: the machine's model, its air, and the anchor where a measured run is at hand.</summary>
internal static class PredictorBuilder
{
    // A ratio written with two decimals may lie this far beyond either end of the belt's travel.
    private const double RatioTolerance = 0.02;

    /// <summary>
    /// Range of either anchor factor beyond which a run is refused: a factor of four stands for an engagement at half
    /// or at twice the computed rpm, and no error of a profile reaches so far.
    /// </summary>
    public const double LeastUsableFactor = 0.25;

    /// <inheritdoc cref="LeastUsableFactor"/>
    public const double GreatestUsableFactor = 4;

    /// <summary>The predictor, or null with every problem.</summary>
    public static Predictor? Build(
        CatalogSnapshot catalog,
        MachineModel machine,
        Baseline? baseline,
        string baselinePlace,
        AirState air,
        AirLaw law,
        int pointCount,
        List<RequestProblem> problems,
        List<Supersession>? superseded = null)
    {
        AnchoredMachine? anchored = null;
        if (baseline is not null)
        {
            anchored = PreparedMachines.Of(catalog).Anchored(
                RunKey.Of(machine, baseline, law, baselinePlace),
                () => SolveAnchor(catalog, machine, baseline, baselinePlace, law, problems));
            if (anchored is null)
                return null;
            superseded?.AddRange(anchored.Superseded);
            machine = anchored.Machine;
        }

        double torqueFactor = machine.TorqueFactor(air, law);
        ShiftModel model = machine.At(pointCount).Model.With(torqueFactor).With(anchored?.Factors ?? AnchorFactors.None);
        return new Predictor(machine, model, torqueFactor, anchored?.Report) { Run = anchored?.Run };
    }

    /// <summary>A problem for each rule that the model cannot do without and that the set breaks.</summary>
    public static bool Computable(SetUp set, MachineModel machine, string place, List<RequestProblem> problems)
    {
        RequestProblem[] found =
        [
            .. from broken in SetRules.BrokenToCompute(set, machine)
            select Unusable(set, machine, place, broken),
        ];
        problems.AddRange(found);
        return found.Length == 0;
    }

    // Where another hole mends it, the hole is what is wrong and not the spring.
    private static RequestProblem Unusable(SetUp set, MachineModel machine, string place, RuleOutcome broken)
    {
        SpringHole[] holes = DrivenSideRules.All.Any(r => r.Name == broken.Rule) ? [.. DrivenSideRules.Holes(set.Driven, machine)] : [];
        string expected = $"that the model can compute on this machine; {broken.Check.Sentence}. {Remedy(place)}";
        return holes.Length > 0
            ? new RequestProblem(
                $"{place}/hole", RequestProblemCodes.PartUnusable, set.Driven.Hole.Name,
                $"a place for the driven spring {broken.Part} {expected}. It can be computed in {string.Join(", ", holes.Select(h => Words.Of(h, machine)))}")
            : new RequestProblem(
                $"{place}/{Words.Camel($"{broken.Slot}")}", RequestProblemCodes.PartUnusable, broken.Part, $"a part {expected}");
    }

    // What the request did not send stands in the machine's profile, where its sender does not look.
    private static string Remedy(string place) => place switch
    {
        FromProfile.Fitted => "It stands in the fitted set of the machine's profile: correct the part or the profile in the catalog, or send fitted",
        FromProfile.Baseline + "/parts" =>
            "It stands in the first baseline of the machine's profile: correct the part or the profile in the catalog, or send baseline",
        _ => $"It stands in {place}: name another part there, or correct its numbers in the catalog",
    };

    private static AnchoredMachine? SolveAnchor(
        CatalogSnapshot catalog,
        MachineModel machine,
        Baseline baseline,
        string place,
        AirLaw law,
        List<RequestProblem> problems)
    {
        var superseded = new List<Supersession>();
        SetUp? set = new SetUpReader(catalog, machine.Profile, problems, superseded).Find(baseline.Parts, $"{place}/parts");
        if (set is null || !Computable(set, machine, $"{place}/parts", problems))
            return null;
        if (Readings(machine, baseline, place, problems) is not { } readings)
            return null;

        BeltPosition[] positions = [.. readings.Select(r => r.Position)];
        double[] rpm = [.. readings.Select(r => r.Rpm)];
        double torqueFactor = machine.TorqueFactor(baseline.Air, law);
        ShiftModel bare = ModelAt(machine, baseline, positions).With(torqueFactor);
        DriveSide drive = Predictor.Drive(bare, machine, set.Spring, set.Flyweight);
        DrivenSide driven = Predictor.Driven(bare, machine, set.Driven);
        AnchorFactors factors;
        double? friction = null;
        if (baseline.SolveFriction)
        {
            if (!MayTellFriction(machine, positions, place, problems))
                return null;
            (friction, factors) = Anchor.SolveWithFriction(
                machine.Drivetrain, positions, torqueFactor, drive, driven, baseline.EngagementRpm, rpm);
            if (!Plausible(friction.Value, place, problems))
                return null;
            machine = machine.WithFriction(friction.Value);
            bare = ModelAt(machine, baseline, positions).With(torqueFactor);
            if (!Grips(bare, machine, set, rpm, friction.Value, place, problems))
                return null;
        }
        else
        {
            factors = Anchor.Solve(
                bare, drive, driven, machine.Drivetrain.FlyweightFrictionShare, baseline.EngagementRpm, rpm);
        }

        if (!(factors.Flyweight > 0 && factors.Thrust > 0))
        {
            problems.Add(new RequestProblem(
                place, RequestProblemCodes.BaselineUnusable, null,
                "a run that these parts can make: at the measured speeds the flyweights do not even overcome the drive "
                + "spring; check the fitted parts, the station masses and the rpm"));
            return null;
        }

        RequestProblem[] farOut = [.. FarOut("flyweight thrust", factors.Flyweight, place), .. FarOut("belt thrust", factors.Thrust, place)];
        problems.AddRange(farOut);
        if (farOut.Length > 0)
            return null;

        return new AnchoredMachine(
            machine,
            factors,
            Report(bare.With(factors), machine, set, rpm, friction),
            new MeasuredRun(set, positions, rpm, baseline.Air, torqueFactor, baseline.EngagementRpm, baseline.SolveFriction),
            superseded);
    }

    // A flat run is read where the machine is asked at the standard number of points: its tables serve both.
    private static ShiftModel ModelAt(MachineModel machine, Baseline baseline, BeltPosition[] positions) => baseline.Shift.Count == 0
        ? machine.At(PickRequest.StandardPointCount).Model
        : new ShiftModel(machine.Drivetrain, positions, 1, AnchorFactors.None);

    // Friction and the factor on belt thrust do the same at any one ratio: only ratios apart tell them from each other.
    private static bool MayTellFriction(
        MachineModel machine, BeltPosition[] positions, string place, List<RequestProblem> problems)
    {
        double spread = positions.Max(p => p.Ratio) / positions.Min(p => p.Ratio);
        if (spread < Anchor.LeastRatioSpread)
        {
            problems.Add(new RequestProblem(
                $"{place}/solveFriction", RequestProblemCodes.BaselineUnusable, null,
                $"two or more shift points of which the greatest ratio is at least {Anchor.LeastRatioSpread:0.0} times the "
                + $"least; here it is {spread:0.00} times. Add one in low gear and one near full shift, or leave solveFriction out"));
        }

        if (machine.Drivetrain.BeltFrictionByRadius is not null)
        {
            problems.Add(new RequestProblem(
                $"{place}/solveFriction", RequestProblemCodes.BaselineUnusable, null,
                $"a belt of one friction; frictionByRadius of {machine.Profile.Belt.Id} states a measured one. Leave solveFriction out"));
        }

        return spread >= Anchor.LeastRatioSpread && machine.Drivetrain.BeltFrictionByRadius is null;
    }

    private static bool Plausible(double friction, string place, List<RequestProblem> problems)
    {
        const double edge = 1e-3;
        if (friction > Anchor.LeastFriction + edge && friction < Anchor.GreatestFriction - edge)
            return true;
        problems.Add(new RequestProblem(
            $"{place}/solveFriction", RequestProblemCodes.BaselineUnusable, $"{friction:0.###}",
            $"a run that a belt friction between {Anchor.LeastFriction:0.0} and {Anchor.GreatestFriction:0.0} explains: the best "
            + "lies beyond. Check the measured rpm and their ratios, or leave solveFriction out"));
        return false;
    }

    // Where the belt slips its whole wrap is active: more friction or less changes nothing that the factor does not.
    private static bool Grips(
        ShiftModel model, MachineModel machine, SetUp set, double[] rpm, double friction, string place, List<RequestProblem> problems)
    {
        DrivenSide driven = Predictor.Driven(model, machine, set.Driven);
        string[] slipping =
        [
            .. Enumerable.Range(0, rpm.Length).Where(j => model.UpshiftSlipMargin(rpm[j], driven, j) < 1)
                .Select(j => $"{model.Positions[j].Ratio:0.00}"),
        ];
        if (slipping.Length == 0)
            return true;
        problems.Add(new RequestProblem(
            $"{place}/solveFriction", RequestProblemCodes.BaselineUnusable, $"{friction:0.###}",
            $"a run in which the belt grips: with the friction that explains it best the belt slips at ratio {Words.List(slipping)}, and a "
            + "slipping belt does not tell its friction. Leave those shift points out, measure with a driven spring that holds the belt, "
            + "or leave solveFriction out"));
        return false;
    }

    private static IEnumerable<RequestProblem> FarOut(string what, double factor, string place)
    {
        if (factor is not (< LeastUsableFactor or > GreatestUsableFactor))
            yield break;
        yield return new RequestProblem(
            place, RequestProblemCodes.BaselineUnusable, $"factor {factor:0.###} on {what}",
            $"a run that the model meets with a factor on {what} from {LeastUsableFactor} to {GreatestUsableFactor}; this one asks "
            + $"for {factor:0.###}, so it cannot be of these parts: check the fitted parts, the station masses, the rpm and their units");
    }

    private static Anchoring Report(ShiftModel anchored, MachineModel machine, SetUp set, double[] rpm, double? friction)
    {
        AnchorFactors factors = anchored.Anchor;
        DriveSide drive = Predictor.Drive(anchored, machine, set.Spring, set.Flyweight);
        DrivenSide driven = Predictor.Driven(anchored, machine, set.Driven);
        var residuals = new List<RatioRpm>();
        var warnings = new List<string>();
        for (int j = 0; j < rpm.Length; j++)
        {
            if (anchored.BalanceRpm(drive, driven, j, ShiftDirection.Upshift) is { } model)
                residuals.Add(new RatioRpm(anchored.Positions[j].Ratio, model - rpm[j]));
            else
                warnings.Add($"With these factors the measured set does not shift at ratio {anchored.Positions[j].Ratio:0.00} below the "
                    + "rev limit.");
        }

        WarnOfFactor("flyweight thrust", factors.Flyweight);
        WarnOfFactor("belt thrust", factors.Thrust);
        return new Anchoring(factors.Flyweight, factors.Thrust, friction, residuals, warnings);

        void WarnOfFactor(string what, double factor)
        {
            if (factor is < Anchor.LeastUsualFactor or > Anchor.GreatestUsualFactor)
            {
                warnings.Add(
                    $"The factor on {what} is {factor:0.00}, outside {Anchor.LeastUsualFactor:0.0} to "
                    + $"{Anchor.GreatestUsualFactor:0.0}: check the fitted parts, the measured rpm and the machine's profile.");
            }
        }
    }

    // Without an engagement the factor on flyweight thrust cannot be told; where another device starts the machine there is none.
    private static double? Engagement(MachineModel machine, Baseline baseline, string place, List<RequestProblem> problems)
    {
        if (baseline.EngagementRpm is null == machine.StartsByBelt)
        {
            problems.Add(new RequestProblem(
                $"{place}/engagementRpm", machine.StartsByBelt ? RequestProblemCodes.EngagementNeeded : RequestProblemCodes.EngagementNotByBelt,
                null,
                machine.StartsByBelt
                    ? "the rpm at which the belt takes hold"
                    : $"no engagement: a {Words.Of(machine.Profile.DriveClutch.StartDevice.ToString())} starts this machine, not the belt"));
            return null;
        }

        return baseline.EngagementRpm;
    }

    private static List<(BeltPosition Position, double Rpm)>? Readings(
        MachineModel machine, Baseline baseline, string place, List<RequestProblem> problems)
    {
        int before = problems.Count;
        double limit = machine.Drivetrain.RevLimitRpm;
        var readings = new List<(BeltPosition, double)>();
        double engagement = Engagement(machine, baseline, place, problems) is { } measured && CheckRpm(measured, "engagementRpm", least: 0)
            ? measured
            : 0;
        if (baseline.FlatShiftRpm is null && baseline.Shift.Count == 0)
        {
            problems.Add(new RequestProblem(
                place, RequestProblemCodes.BaselineUnusable, null,
                "the rpm held at full throttle as well: shiftRpm, or shiftCurve where ratios were noted"));
        }

        if (baseline.FlatShiftRpm is { } flat)
        {
            CheckRpm(flat, "shiftRpm", engagement);
            readings.AddRange(machine.At(PickRequest.StandardPointCount).Model.Positions.Select(p => (p, flat)));
        }

        for (int i = 0; i < baseline.Shift.Count; i++)
        {
            (double ratio, double rpm) = (baseline.Shift[i].Ratio, baseline.Shift[i].Rpm);
            CheckRpm(rpm, $"shiftCurve/{i}/rpm", engagement);
            if (ratio > machine.Contact.Ratio + RatioTolerance || ratio < machine.FullShift.Ratio - RatioTolerance)
            {
                problems.Add(new RequestProblem(
                    $"{place}/shiftCurve/{i}/ratio", RequestProblemCodes.BaselineUnusable, $"{ratio:0.###}",
                    $"a ratio that the belt reaches, from {machine.Contact.Ratio:0.00} to "
                    + $"{machine.FullShift.Ratio:0.00}"));
                continue;
            }

            // A reading just beyond an end belongs to that end: the flyweight curve stops there.
            double inside = Math.Clamp(ratio, machine.FullShift.Ratio, machine.Contact.Ratio);
            readings.Add((machine.Drivetrain.Belt.AtRatio(inside), rpm));
        }

        return problems.Count == before ? readings : null;

        bool CheckRpm(double rpm, string member, double least)
        {
            if (rpm > 0 && rpm >= least && rpm <= limit)
                return true;
            string from = least > 0 ? $"from the engagement at {Words.Rpm(least)}" : "above 0";
            problems.Add(new RequestProblem(
                $"{place}/{member}", RequestProblemCodes.BaselineUnusable, Words.Rpm(rpm),
                $"a speed {from} up to the rev limit of {Words.Rpm(limit)}"));
            return false;
        }
    }
}

/// <summary>Places of what a request leaves to the machine's profile.</summary>
internal static class FromProfile
{
    public const string Fitted = "machine/fitted";
    public const string Baseline = "machine/baselines/0";
}
