using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Answers what one given set does.</summary>
public static class SetPrediction
{
    public static Outcome<PredictionAnswer> Predict(CatalogSnapshot catalog, PredictionRequest request) =>
        throw new NotSupportedException($"{catalog.Revision} {request.PointCount}");
}

/// <summary>The set that was predicted, what it does, and the cautions that go with it.</summary>
public sealed record PredictionAnswer(PartSet Parts, Prediction Prediction, IReadOnlyList<Caution> Cautions);
