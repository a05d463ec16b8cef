namespace PartPicker.Catalog;

/// <summary>Every code that a finding can carry. A code keeps its meaning for ever.</summary>
public static class FindingCodes
{
    // The folder and its files.
    public const string MissingFolder = "missing-folder";
    public const string EmptyCatalog = "empty-catalog";
    public const string UnknownFile = "unknown-file";
    public const string UnreadableFile = "unreadable-file";
    public const string TooManyFiles = "too-many-files";
    public const string FileTooLarge = "file-too-large";
    public const string NotUtf8 = "not-utf8";
    public const string TooManyFindings = "too-many-findings";

    // The lines of a CSV file.
    public const string MissingHeader = "missing-header";
    public const string WrongDelimiter = "wrong-delimiter";
    public const string StrayQuote = "stray-quote";
    public const string UnclosedQuote = "unclosed-quote";
    public const string TooManyLines = "too-many-lines";
    public const string LineTooLong = "line-too-long";
    public const string CellTooLong = "cell-too-long";
    public const string RaggedRow = "ragged-row";
    public const string UnknownColumn = "unknown-column";
    public const string DuplicateColumn = "duplicate-column";
    public const string MissingColumn = "missing-column";
    public const string UnitInHeader = "unit-in-header";

    // The members of a JSON file.
    public const string BadJson = "bad-json";
    public const string WrongShape = "wrong-shape";
    public const string UnknownMember = "unknown-member";
    public const string DuplicateMember = "duplicate-member";

    // One value.
    public const string MissingValue = "missing-value";
    public const string BadNumber = "bad-number";
    public const string BadQuantity = "bad-quantity";
    public const string DecimalComma = "decimal-comma";
    public const string OutOfRange = "out-of-range";
    public const string BadText = "bad-text";
    public const string BadId = "bad-id";
    public const string BadChoice = "bad-choice";
    public const string BadPoint = "bad-point";
    public const string BadEntry = "bad-entry";
    public const string TooFewPoints = "too-few-points";
    public const string TooManyPoints = "too-many-points";
    public const string NotRising = "not-rising";
    public const string DuplicateValue = "duplicate-value";

    // The values of one item together.
    public const string HalfGiven = "half-given";
    public const string EitherOr = "either-or";
    public const string NotKnown = "not-known";
    public const string NotBelow = "not-below";
    public const string WrongTrend = "wrong-trend";
    public const string UnknownMaterial = "unknown-material";

    // Items together.
    public const string DuplicateId = "duplicate-id";
    public const string UnknownReference = "unknown-reference";
    public const string WrongKind = "wrong-kind";
    public const string ReferenceLoop = "reference-loop";
    public const string ChainTooLong = "chain-too-long";
    public const string UnknownHole = "unknown-hole";
    public const string UnknownStation = "unknown-station";
    public const string UnknownMass = "unknown-mass";
    public const string UnknownStep = "unknown-step";
    public const string TooManyShims = "too-many-shims";
    public const string BeltDoesNotRun = "belt-does-not-run";
    public const string TooHeavy = "too-heavy";
    public const string OutsideYears = "outside-years";
    public const string BadCurrency = "bad-currency";
    public const string MixedCurrency = "mixed-currency";
}
