using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Answers what one given set does.</summary>
public static class SetPrediction
{
    /// <summary>The prediction, anchored where a measured run is at hand; or every reason why there is none.</summary>
    /// <param name="catalog">Where the parts of the set are found.</param>
    /// <param name="request">Within its ranges, which whoever reads it from outside checks.</param>
    /// <remarks>
    /// A part that does not fit but can be computed is predicted, with a caution. Nothing that the import of catalogs
    /// accepts makes it throw.
    /// </remarks>
    public static Outcome<PredictionAnswer> Predict(CatalogSnapshot catalog, PredictionRequest request)
    {
        var problems = new List<RequestProblem>();
        var superseded = new List<Supersession>();
        MachineModel? machine = PreparedMachines.Of(catalog).Machine(request.Machine, problems);
        PartSet? ids = request.Parts ?? request.Machine.Machine.Fitted;
        if (ids is null)
        {
            problems.Add(new RequestProblem(
                "parts", RequestProblemCodes.FittedNeeded, null,
                "a set of parts: the catalog does not say what this machine has fitted"));
        }

        if (machine is null || ids is null)
            return Outcome.Refused<PredictionAnswer>(problems);
        string place = request.Parts is null ? FromProfile.Fitted : "parts";
        SetUp? set = new SetUpReader(catalog, request.Machine, problems, superseded).Find(ids, place);
        if (set is not null)
            PredictorBuilder.Computable(set, machine, place, problems);
        Baseline? baseline = request.Anchor ? request.Baseline ?? request.Machine.OwnBaseline : null;
        Predictor? predictor = PredictorBuilder.Build(
            catalog, machine, baseline, request.Baseline is null ? FromProfile.Baseline : "baseline",
            request.Air, request.AirLaw, request.PointCount, problems, superseded);
        if (problems.Count > 0)
            return Outcome.Refused<PredictionAnswer>(problems);

        var inputs = new InputModel(predictor!);
        Response response = Response.Of(inputs, set!);
        Prediction prediction = response.Banded(predictor!.Predict(set!));
        IReadOnlyList<TracedSensitivity> sensitivities = Sensitivities.Of(inputs, set!);
        IReadOnlyList<Caution> cautions = CautionWriter.BySeverity(
        [
            .. CautionWriter.For(set!, prediction, machine),
            .. CautionWriter.ForMissingBands(prediction),
            .. new MisfitCautions(machine, [.. catalog.All<Helix>()]).For(set!),
        ]);
        return Outcome.Of(new PredictionAnswer(
            set!.Ids, prediction, cautions, [.. superseded.Distinct()], [.. sensitivities.Select(each => each.Sensitivity)],
            Explanations(request, predictor, set!, prediction, new UncertaintyTree(response, sensitivities)))
        {
            Change = prediction.Anchoring is null ? Change(catalog, inputs, set) : null,
        });
    }

    private static IReadOnlyList<ExplainedValue> Explanations(
        PredictionRequest request, Predictor predictor, SetUp set, Prediction prediction, UncertaintyTree uncertainty)
    {
        if (request.Explain.Count == 0)
            return [];
        var tree = new ExplanationTree(
            new Scene(
                predictor.Machine, set, predictor.Model, request.Air, request.AirLaw, predictor.TorqueFactor, predictor.Run),
            prediction, uncertainty);
        return [.. request.Explain.Select(tree.Of).OfType<ExplainedValue>()];
    }

    // Nobody asked for the fitted set: where it cannot be computed there is no change, and no problem.
    private static SetChange? Change(CatalogSnapshot catalog, InputModel inputs, SetUp set)
    {
        var aside = new List<RequestProblem>();
        MachineModel machine = inputs.Predictor.Machine;
        return machine.Profile.Machine.Fitted is { } ids
            && new SetUpReader(catalog, machine.Profile, aside).Find(ids, FromProfile.Fitted) is { } fitted
            && PredictorBuilder.Computable(fitted, machine, FromProfile.Fitted, aside)
            ? SetChange.Of(inputs, set, fitted)
            : null;
    }
}
