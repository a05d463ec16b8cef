namespace PartPicker.Catalog;

/// <summary>How much one import takes. Going beyond any of them is a finding.</summary>
public static class ImportLimits
{
    public const int MaxFiles = 500;
    public const int MaxFileBytes = 16 * 1024 * 1024;

    /// <summary>Lines of one CSV file, header included.</summary>
    public const int MaxLines = 50_000;

    public const int MaxLineLength = 100_000;

    /// <summary>Room for a curve of as many points as a field takes.</summary>
    public const int MaxCellLength = 10_000;

    /// <summary>Nesting of a machine file: a point in a wrapped list of curves is the seventh level.</summary>
    public const int MaxJsonDepth = 8;

    public const int MaxBaselines = 50;

    /// <summary>Findings that are listed; a closing one says when there were more.</summary>
    public const int MaxFindings = 1_000;

    /// <summary>Characters of a value that a finding repeats.</summary>
    public const int MaxShownLength = 120;
}
