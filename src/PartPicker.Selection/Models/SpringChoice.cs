using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>A drive spring on no shims, or on some equal ones: one candidate.</summary>
internal sealed record SpringChoice(DriveSpring Spring, Shim? Shim, int Count)
{
    /// <summary>How much the shims shorten the installed length (m).</summary>
    public double ShimThickness => Shim is { } shim ? Count * shim.Thickness.Meters : 0;

    public FittedShims? Shims => Shim is { } shim && Count > 0 ? new FittedShims(shim.Id, Count) : null;

    /// <summary>How a refusal names it.</summary>
    public string Label => Shims is { } shims ? $"{Spring.Id} on {shims.Count} × {shims.ShimId}" : Spring.Id;

    public bool SameAs(SpringChoice other) => Spring.Id == other.Spring.Id && Shims == other.Shims;
}
