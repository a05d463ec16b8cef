using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What is asked of <see cref="SetPrediction"/>: what does this set do on this machine?</summary>
public sealed record PredictionRequest
{
    public required MachineProfile Machine { get; init; }

    /// <summary>The set to predict; the machine's own when null.</summary>
    public PartSet? Parts { get; init; }

    /// <summary>A measured run that the caller brings; the machine's first when null.</summary>
    public Baseline? Baseline { get; init; }

    /// <summary>False: leave every baseline aside.</summary>
    public bool Anchor { get; init; } = true;

    public AirState Air { get; init; }
    public AirLaw AirLaw { get; init; } = AirLaw.SaeJ1349;
    public int PointCount { get; init; } = PickRequest.StandardPointCount;
}
