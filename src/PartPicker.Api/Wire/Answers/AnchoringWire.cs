namespace PartPicker.Api.Wire;

/// <summary>The two factors that tie the model to a measured run.</summary>
internal sealed record AnchoringWire
{
    /// <summary>On flyweight thrust; 1 where model and run agree.</summary>
    public required double FlyweightFactor { get; init; }

    /// <summary>On belt thrust; 1 where model and run agree.</summary>
    public required double ThrustFactor { get; init; }

    /// <summary>
    /// Friction of the belt that was solved from the run together with thrustFactor; null where the profile's was kept and
    /// the factors alone tie the model.
    /// </summary>
    public required double? SolvedFriction { get; init; }

    /// <summary>Model less measured rpm at each measured ratio, with the factors in place.</summary>
    public required IReadOnlyList<ResidualWire> Residuals { get; init; }

    /// <summary>Factors outside the usual range, in a person's words.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
}
