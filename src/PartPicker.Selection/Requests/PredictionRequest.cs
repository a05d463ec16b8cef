using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What is asked of <see cref="SetPrediction"/>: what does this set do on this machine?</summary>
public sealed record PredictionRequest
{
    /// <summary>A machine of the catalog that the parts come from.</summary>
    public required MachineProfile Machine { get; init; }

    /// <summary>The set to predict; the machine's own when null.</summary>
    public PartSet? Parts { get; init; }

    /// <summary>A measured run that the caller brings; the machine's first when null.</summary>
    public Baseline? Baseline { get; init; }

    /// <summary>False: leave every baseline aside.</summary>
    public bool Anchor { get; init; } = true;

    /// <summary>The air to predict for; altitude up to the tropopause at 11 000 m.</summary>
    public AirState Air { get; init; }

    /// <summary>Which law scales torque with air, here and in the measured run.</summary>
    public AirLaw AirLaw { get; init; } = AirLaw.SaeJ1349;

    /// <summary>K: at how many ratios the curve is computed.</summary>
    public int PointCount { get; init; } = PickRequest.StandardPointCount;

    /// <summary>Numbers to take apart: of <see cref="ExplainedNames.Of"/> for that many points.</summary>
    public IReadOnlyList<string> Explain { get; init; } = [];
}
