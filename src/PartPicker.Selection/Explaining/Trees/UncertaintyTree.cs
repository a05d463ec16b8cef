using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>Takes bands and sensitivities apart, down to answers of the model with one input moved.</summary>
/// <remarks>Such an answer is an input here: it is the prediction of another machine, which has a tree of its own.</remarks>
/// <param name="response">How the numbers answer to uncertain inputs: engagement, then the upshift at each point.</param>
/// <param name="sensitivities">Those of the prediction, in its order.</param>
internal sealed class UncertaintyTree(Response response, IReadOnlyList<TracedSensitivity> sensitivities)
{
    private const string Unit = "rpm";

    /// <summary>Half width of the band of a number; null where there is none.</summary>
    public ExplainedValue? Band(string name, int number)
    {
        var nodes = new TreeNodes();
        return response.HalfWidths[number] is { } width
            ? nodes.Of(name, width, Unit, Relations.Band, () => response.Effects(number).SelectMany(effect => Moments(nodes, effect)))
            : null;
    }

    /// <summary>The change of a number by one step of the k-th sensitivity, counted from 0; null where there is none.</summary>
    public ExplainedValue? Sensitivity(string name, int k, int number)
    {
        if (k >= sensitivities.Count)
            return null;
        TracedSensitivity traced = sensitivities[k];
        Sensitivity sensitivity = traced.Sensitivity;
        if ((number == 0 ? sensitivity.EngagementRpm : sensitivity.UpshiftRpm[number - 1]) is not { } change)
            return null;
        var nodes = new TreeNodes();
        if (traced.HalfStep is not { } halfStep)
        {
            return nodes.Of(
                name, change, Unit, Relations.NextHole,
                () => [nodes.Input("rpmInNextHole", traced.Above[number], Unit), nodes.Input("rpmInHole", traced.Below[number], Unit)]);
        }

        return nodes.Of(
            name, change, Unit, Relations.Sensitivity,
            () =>
            [
                Of("step", sensitivity.Step),
                nodes.Input("rpmAbove", traced.Above[number], Unit),
                nodes.Input("rpmBelow", traced.Below[number], Unit),
                Of("halfStep", sensitivity.Step with { Value = halfStep }),
            ]);

        ExplainedValue Of(string part, Measure measure) => measure.Dimension is { } dimension
            ? nodes.Input(part, measure.Value, dimension)
            : nodes.Input(part, measure.Value);
    }

    private static IEnumerable<ExplainedValue> Moments(TreeNodes nodes, InputEffect effect)
    {
        yield return nodes.Of($"{effect.Input}/meanChange", effect.Mean, Unit, Relations.MeanChange, Changes);
        yield return nodes.Of($"{effect.Input}/meanSquareChange", effect.MeanSquare, "rpm²", Relations.MeanSquareChange, Changes);

        IEnumerable<ExplainedValue> Changes() =>
        [
            nodes.Input($"{effect.Input}/atLeast", effect.AtLeast, Unit),
            nodes.Input($"{effect.Input}/belowU", effect.BelowU, Unit),
            nodes.Input($"{effect.Input}/aboveU", effect.AboveU, Unit),
            nodes.Input($"{effect.Input}/atMost", effect.AtMost, Unit),
        ];
    }
}
