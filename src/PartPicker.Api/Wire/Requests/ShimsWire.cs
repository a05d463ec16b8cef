using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>Equal shims under the drive spring.</summary>
internal sealed record ShimsWire : IRequestWire
{
    /// <summary>Id of the shim.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public required string Shim { get; init; }

    /// <summary>How many of them.</summary>
    [Range(1, RequestLimits.MaxShims)]
    public required int Count { get; init; }
}
