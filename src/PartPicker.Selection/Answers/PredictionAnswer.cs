using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>The set that was predicted, what it does, and the cautions that go with it.</summary>
public sealed record PredictionAnswer(
    PartSet Parts, Prediction Prediction, IReadOnlyList<Caution> Cautions, IReadOnlyList<Supersession> Superseded,
    IReadOnlyList<Sensitivity> Sensitivities, IReadOnlyList<ExplainedValue> Explanations)
{
    /// <summary>Without a measured run: what changes against the machine's own fitted set, where that can be computed.</summary>
    public SetChange? Change { get; init; }
}
