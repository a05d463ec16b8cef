using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.TestKit;

/// <summary>Scores one set and holds it to the rules of a request.</summary>
internal sealed class PlainJudge
{
    private readonly CatalogSnapshot catalog;
    private readonly PickRequest request;
    private readonly PartSet fitted;
    private readonly Predictor predictor;
    private readonly double[] targets;
    private readonly double? engagementTarget;

    public PlainJudge(CatalogSnapshot catalog, PickRequest request, PartSet fitted)
    {
        this.catalog = catalog;
        this.request = request;
        this.fitted = fitted;
        var problems = new List<RequestProblem>();
        Machine = MachineModel.Create(request.Machine, problems)
            ?? throw new ArgumentException("The machine is impossible.");
        predictor = PredictorBuilder.Build(
            catalog, Machine, request.Anchor ? request.Baseline ?? request.Machine.OwnBaseline : null, "", request.Air, request.AirLaw,
            request.PointCount, problems) ?? throw new ArgumentException("The baseline is unusable.");
        SetUp now = new SetUpReader(catalog, request.Machine, problems, []).Find(fitted, "")
            ?? throw new ArgumentException("The fitted set is not there.");
        targets = PlainTargets.Of(request, predictor, now);
        engagementTarget = PlainTargets.Engagement(request, predictor, now);
    }

    public MachineModel Machine { get; }

    /// <summary>The set with its score; null where it breaks a rule.</summary>
    public PlainPick? Try(SetUp set)
    {
        double engages = predictor.Drive(set.Spring, set.Flyweight).Engagement.Rpm;
        Prediction prediction = predictor.Predict(set);
        if (request.LaunchRpm is { } launch && engages < launch + request.LaunchMarginRpm)
            return null;
        double engagement = engagementTarget is { } wanted ? (engages - wanted) / request.Tolerances.EngagementRpm : 0;
        double sum = 0;
        bool within = Math.Abs(engagement) <= 1;
        for (int j = 0; j < targets.Length; j++)
        {
            if (prediction.Curve[j].Upshift is not { } balance || balance.SlipMargin < request.SlipMargin)
                return null;
            double error = (balance.Rpm - targets[j]) / request.Tolerances.ShiftRpm;
            sum += error * error;
            within &= Math.Abs(error) <= 1;
        }

        if (!PlainPrice.TryOf(set, fitted, request, catalog, out long? price)
            || (request.PriceCeilingMinor is { } ceiling && !(price <= ceiling)))
        {
            return null;
        }

        bool asked = engagementTarget is not null;
        double miss = Math.Sqrt(
            (asked ? request.Weights.Engagement : 0) * engagement * engagement
            + (asked ? request.Weights.Shift : 1) * (sum / targets.Length));
        return new PlainPick(
            set.Ids,
            (long)Math.Floor(1000 * miss + 0.5),
            Enum.GetValues<Slot>().Count(slot => PlainSets.Changed(slot, set, fitted)),
            price,
            within,
            set.Flyweight.Body.AdjusterCurves?.ToList().FindIndex(c => c.Name == set.Flyweight.AdjusterStep) ?? 0);
    }
}
