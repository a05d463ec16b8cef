namespace PartPicker.Api.Wire;

/// <summary>A set that breaks one waived rule, and by how much.</summary>
internal sealed record WaivedSetWire
{
    /// <summary>The parts.</summary>
    public required PartsWire Parts { get; init; }

    /// <summary>Weighted root mean square of the errors, in tolerances.</summary>
    public required double Miss { get; init; }

    /// <summary>True when no single error exceeds its tolerance.</summary>
    public required bool WithinTolerance { get; init; }

    /// <summary>What was waived for it.</summary>
    public required IReadOnlyList<RefusalWire> Broken { get; init; }
}
