using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.TestKit;

/// <summary>The judge: tries every set of a catalog, skips nothing, sorts the whole list, then cuts it.</summary>
/// <remarks>It shares the mechanics with the service, and nothing of its pools, score, order or prices.</remarks>
public static class PlainSearch
{
    /// <summary>The best sets in the order that the service promises.</summary>
    public static IReadOnlyList<PlainPick> Run(CatalogSnapshot catalog, PickRequest request)
    {
        var problems = new List<RequestProblem>();
        MachineModel machine = MachineModel.Create(request.Machine, problems)
            ?? throw new ArgumentException("The machine is impossible.");
        Predictor predictor = PredictorBuilder.Build(
            catalog, machine, request.Baseline ?? request.Machine.OwnBaseline, "", request.Air, request.AirLaw,
            request.PointCount, problems) ?? throw new ArgumentException("The baseline is unusable.");
        PartSet fitted = request.Fitted ?? request.Machine.Machine.Fitted!;

        var found = new List<PlainPick>();
        foreach (SetUp set in EverySet(catalog, machine))
        {
            if (Kept(set, fitted, request.Keep) && Try(set, predictor, request, fitted) is { } pick)
                found.Add(pick);
        }

        return
        [
            .. found
                .OrderBy(p => p.RoundedMiss)
                .ThenBy(p => p.Changes)
                .ThenBy(p => p.Price ?? long.MaxValue)
                .ThenBy(p => p.Parts.DriveSpring, StringComparer.Ordinal)
                .ThenBy(p => p.Parts.Flyweight, StringComparer.Ordinal)
                .ThenBy(p => Mass(p, StationName.Heel))
                .ThenBy(p => Mass(p, StationName.Middle))
                .ThenBy(p => Mass(p, StationName.Tip))
                .ThenBy(p => p.Parts.DrivenSpring, StringComparer.Ordinal)
                .ThenBy(p => p.Parts.Hole, StringComparer.Ordinal)
                .ThenBy(p => p.Parts.Helix, StringComparer.Ordinal)
                .Take(request.Count),
        ];
    }

    private static double Mass(PlainPick pick, StationName station) => pick.Parts.StationMasses.GetValueOrDefault(station);

    private static IEnumerable<SetUp> EverySet(CatalogSnapshot catalog, MachineModel machine) =>
        from driveSpring in catalog.All<DriveSpring>()
        where Fits(DriveSpringRules.All, driveSpring, machine)
        from body in catalog.All<Flyweight>()
        where Fits(FlyweightRules.All, body, machine)
        from heel in Masses(body, StationName.Heel)
        from middle in Masses(body, StationName.Middle)
        from tip in Masses(body, StationName.Tip)
        from drivenSpring in catalog.All<DrivenSpring>()
        where Fits(DrivenSpringRules.All, drivenSpring, machine)
        from helix in catalog.All<Helix>()
        where Fits(HelixRules.All, helix, machine)
        from hole in machine.Profile.DrivenClutch.Holes
        let driven = new DrivenChoice(drivenSpring, hole, helix)
        where Fits(DrivenSideRules.All, driven, machine)
        select new SetUp(
            driveSpring,
            new FlyweightChoice(body, new Dictionary<StationName, double>
            {
                [StationName.Heel] = heel,
                [StationName.Middle] = middle,
                [StationName.Tip] = tip,
            }),
            driven);

    private static bool Fits<T>(IReadOnlyList<FitRule<T>> rules, T candidate, MachineModel machine) =>
        !rules.Any(r => r.Check(candidate, machine).Verdict == FitVerdict.Broken);

    private static double[] Masses(Flyweight body, StationName name) =>
        body.Stations().FirstOrDefault(s => s.Name == name) is { } station ? [.. station.Masses.Distinct()] : [0];

    private static bool Kept(SetUp set, PartSet fitted, IReadOnlySet<Slot> keep) =>
        keep.All(slot => !Changed(slot, set, fitted));

    private static bool Changed(Slot slot, SetUp set, PartSet fitted) => slot switch
    {
        Slot.DriveSpring => set.DriveSpring.Id != fitted.DriveSpring,
        Slot.Flyweight => set.Flyweight.Body.Id != fitted.Flyweight
            || Enum.GetValues<StationName>().Any(s =>
                set.Flyweight.Masses.GetValueOrDefault(s) != fitted.StationMasses.GetValueOrDefault(s)),
        Slot.DrivenSpring => set.Driven.Spring.Id != fitted.DrivenSpring,
        Slot.Hole => set.Driven.Hole.Name != fitted.Hole,
        Slot.Helix => set.Driven.Helix.Id != fitted.Helix,
        _ => throw new ArgumentOutOfRangeException(nameof(slot)),
    };

    private static PlainPick? Try(SetUp set, Predictor predictor, PickRequest request, PartSet fitted)
    {
        Prediction prediction = predictor.Predict(set);
        if (request.LaunchRpm is { } launch && prediction.EngagementRpm < launch + request.LaunchMarginRpm)
            return null;
        double engagement = (prediction.EngagementRpm - request.Target.EngagementRpm) / request.Tolerances.EngagementRpm;
        double sum = 0;
        bool within = Math.Abs(engagement) <= 1;
        foreach (ShiftPoint point in prediction.Curve)
        {
            if (point.Upshift is not { } balance || balance.SlipMargin < request.SlipMargin)
                return null;
            double error = (balance.Rpm - Target(request.Target, point.Ratio)) / request.Tolerances.ShiftRpm;
            sum += error * error;
            within &= Math.Abs(error) <= 1;
        }

        double miss = Math.Sqrt(
            request.Weights.Engagement * engagement * engagement
            + request.Weights.Shift * (sum / prediction.Curve.Count));
        return new PlainPick(
            set.Ids,
            (long)Math.Floor(1000 * miss + 0.5),
            Enum.GetValues<Slot>().Count(slot => Changed(slot, set, fitted)),
            Price(set, fitted, request.Outlet),
            within);
    }

    private static double Target(ShiftTarget target, double ratio)
    {
        RatioRpm[] points = [.. target.Shift.OrderBy(p => p.Ratio)];
        if (ratio <= points[0].Ratio)
            return points[0].Rpm;
        if (ratio >= points[^1].Ratio)
            return points[^1].Rpm;
        int i = Array.FindIndex(points, p => p.Ratio >= ratio);
        double t = (ratio - points[i - 1].Ratio) / (points[i].Ratio - points[i - 1].Ratio);
        return points[i - 1].Rpm + t * (points[i].Rpm - points[i - 1].Rpm);
    }

    private static long? Price(SetUp set, PartSet fitted, Outlet? outlet)
    {
        if (outlet is null)
            return null;
        (string Id, string Fitted)[] bought =
        [
            (set.DriveSpring.Id, fitted.DriveSpring),
            (set.Flyweight.Body.Id, fitted.Flyweight),
            (set.Driven.Spring.Id, fitted.DrivenSpring),
            (set.Driven.Helix.Id, fitted.Helix),
        ];
        long sum = 0;
        foreach ((string id, _) in bought.Where(b => b.Id != b.Fitted))
        {
            if (outlet.Offers.GetValueOrDefault(id)?.PriceMinor is not { } price)
                return null;
            sum += price;
        }

        return sum;
    }
}

/// <summary>A set as the judge ranks it.</summary>
public sealed record PlainPick(PartSet Parts, long RoundedMiss, int Changes, long? Price, bool WithinTolerance);
