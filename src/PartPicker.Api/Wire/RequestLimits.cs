using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>Every limit of a request, in one place for the reader and for the API document.</summary>
internal static class RequestLimits
{
    /// <summary>Most bytes of a body.</summary>
    public const int MaxBodyBytes = 256 * 1024;

    /// <summary>Least bytes of a body in a second.</summary>
    public const double MinBodyBytesPerSecond = 240;

    /// <summary>How long a body may be slower than that.</summary>
    public static readonly TimeSpan BodyRateGrace = TimeSpan.FromSeconds(5);

    /// <summary>Most bytes of the first line of a request: method, address and version.</summary>
    public const int MaxRequestLineBytes = 8 * 1024;

    /// <summary>Most bytes of all headers together.</summary>
    public const int MaxHeaderBytes = 32 * 1024;

    /// <summary>Most headers.</summary>
    public const int MaxHeaders = 100;

    /// <summary>Deepest nesting of a body; no request needs half of it.</summary>
    public const int MaxDepth = 16;

    /// <summary>Longest a pick may search, waiting for its turn included.</summary>
    public static readonly TimeSpan MaxSearchTime = TimeSpan.FromSeconds(60);

    /// <summary>Longest a search runs; then it answers with the best list so far.</summary>
    public static readonly TimeSpan SearchDeadline = TimeSpan.FromSeconds(20);

    /// <summary>When a question that found no place may be sent again.</summary>
    public static readonly TimeSpan BusyRetryAfter = TimeSpan.FromSeconds(2);

    /// <summary>Most answers of one bulk run; a run of more lines is continued with fromLine.</summary>
    public const int MaxBulkAnswers = 1_000_000;

    /// <summary>Most bulk runs at once.</summary>
    public const int MaxBulkRuns = 8;

    /// <summary>Most answers of a bulk run that are begun and not yet written.</summary>
    public const int MaxBulkAnswersHeld = 16;

    /// <summary>Most bytes of the body of a bulk run that are taken in before their turn.</summary>
    public const int MaxBulkBytesAhead = 16 * 1024 * 1024;

    /// <summary>Longest that a bulk run waits for a line, or for its caller to read more.</summary>
    public static readonly TimeSpan MaxBulkStall = TimeSpan.FromMinutes(2);

    /// <summary>How long a caller who still sends after the last line may take to read it.</summary>
    public static readonly TimeSpan BulkLinger = TimeSpan.FromSeconds(2);

    /// <summary>When a bulk run that found no place may be sent again.</summary>
    public static readonly TimeSpan BulkRetryAfter = TimeSpan.FromSeconds(10);

    /// <summary>Greatest line that a bulk run can start from.</summary>
    public const int MaxFromLine = 1_000_000_000;

    /// <summary>Longest text, or longest number as written, that a bulk line may be called by.</summary>
    public const int MaxBulkIdLength = 200;

    /// <summary>Most points of the grid of one bulk line.</summary>
    public const int MaxGridPoints = 10_000;

    /// <summary>Most axes of a grid.</summary>
    public const int MaxAxes = 6;

    /// <summary>Greatest magnitude of a bound of an axis.</summary>
    public const double MaxAxisNumber = 1e9;

    /// <summary>Least step of an axis.</summary>
    public const double MinAxisStep = 1e-6;

    public const double MinRpm = Baseline.MinRpm;
    public const double MaxRpm = Baseline.MaxRpm;
    public const double MaxChangeRpm = ShiftTarget.MaxChangeRpm;
    public const double MinRatio = 0.2;
    public const double MaxRatio = 10;
    public const double MinAltitudeM = AirState.MinAltitudeM;
    public const double MaxAltitudeM = AirState.MaxAltitudeM;
    public const double MinTemperatureK = AirState.MinTemperatureK;
    public const double MaxTemperatureK = AirState.MaxTemperatureK;
    public const double MinRelativeHumidity = AirState.MinRelativeHumidity;
    public const double MaxRelativeHumidity = AirState.MaxRelativeHumidity;
    public const double MinSlipMargin = 0;
    public const double MaxSlipMargin = 5;
    public const double MinLaunchMarginRpm = 0;
    public const double MaxLaunchMarginRpm = 2_000;
    public const double MaxStationMassKg = 0.1;
    public const int MinYear = 1950;
    public const int MaxYear = 2100;
    public const double MinSpeedMPerS = 0;
    public const double MaxSpeedMPerS = 150;
    public const int MaxExcluded = 200;
    public const int MaxShims = 10;

    /// <summary>Most numbers of a prediction that are explained in one answer.</summary>
    public const int MaxExplained = 8;
    public const int MaxPriceMinor = 1_000_000_000;

    /// <summary>How far the weights may miss a sum of 1, for decimals that binary cannot hold.</summary>
    public const double WeightsSumSlack = 1e-9;

    public const int MinCount = 1;
    public const int MaxCount = PickRequest.MaxCount;
    public const int MaxRefusals = PickRequest.MaxRefusalCount;
    public const int MinRatioPoints = PickRequest.MinPointCount;
    public const int MaxRatioPoints = PickRequest.MaxPointCount;
    public const int MaxCurvePoints = ShiftTarget.MaxPoints;
    public const int MaxNameLength = CatalogItem.MaxIdLength;

    /// <summary>Longest text that names are searched for.</summary>
    public const int MaxSearchTextLength = 120;
}
