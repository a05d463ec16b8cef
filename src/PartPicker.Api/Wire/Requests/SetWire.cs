using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>
/// One choice in every slot, by id; what is left out comes from the set that this one changes.
/// </summary>
internal sealed record SetWire : IRequestWire
{
    /// <summary>Id of the drive spring.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public string? DriveSpring { get; init; }

    /// <summary>
    /// Id of the flyweight body. Another body than before starts with empty stations and on no step.
    /// </summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public string? Flyweight { get; init; }

    /// <summary>What is in the stations of each arm; a station left out is empty.</summary>
    public StationMassesInputWire? StationMasses { get; init; }

    /// <summary>Step that the adjuster of a ramp stands on, as stamped; only where the flyweight has one.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public string? AdjusterStep { get; init; }

    /// <summary>
    /// Shims under the drive spring; where they are left out, another drive spring than before has none.
    /// </summary>
    public ShimsWire? Shims { get; init; }

    /// <summary>Id of the driven spring.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public string? DrivenSpring { get; init; }

    /// <summary>Name of the spring hole in the driven clutch, as stamped.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public string? Hole { get; init; }

    /// <summary>Id of the helix.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public string? Helix { get; init; }
}
