using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>Equal shims under the drive spring; a count of 0 says that there are none.</summary>
internal sealed record ShimsWire : IRequestWire
{
    /// <summary>Id of the shim; needed unless the count is 0.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public string? Shim { get; init; }

    /// <summary>How many of them.</summary>
    [Range(0, RequestLimits.MaxShims)]
    public required int Count { get; init; }
}
