using PartPicker.Api.Wire;

namespace PartPicker.Api.Picks;

/// <summary>How long one pick may search.</summary>
internal sealed record SearchTime(TimeSpan Max)
{
    public static readonly SearchTime Standard = new(RequestLimits.MaxSearchTime);
}
