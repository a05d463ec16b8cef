using System.Collections.Frozen;
using PartPicker.Selection;

namespace PartPicker.Api.Errors;

/// <summary>The one list of error codes; the page of errors and the API document are made from it.</summary>
internal static class ErrorCodes
{
    /// <summary>The page that explains every code.</summary>
    public const string Page = "/docs/errors";

    // The body as a whole.
    public static readonly ErrorCode InvalidRequest = new("invalid-request", 400, "Several things are wrong with the request",
        "More than one kind of fault was found; errors[] lists each with its place.",
        "Correct every entry of errors[]: all faults are listed at once.");
    public static readonly ErrorCode MalformedJson = new("malformed-json", 400, "The body is not JSON",
        "The body could not be read as one JSON text in UTF-8.",
        "Look at the line and byte that detail names; comments and trailing commas are not JSON.");
    public static readonly ErrorCode TooDeep = new("too-deep", 400, "The body is nested too deep",
        "Objects and arrays are nested deeper than any request needs.",
        "Send the members that the API document shows.");
    public static readonly ErrorCode JsonNeeded = new("json-needed", 415, "The body must be JSON",
        "The request has no body of media type application/json in UTF-8, or the body is compressed.",
        "Send Content-Type: application/json and an uncompressed body in UTF-8.");
    public static readonly ErrorCode BodyTooLarge = new("body-too-large", 413, "The body is too large",
        "The body has more bytes than the service reads.",
        "Send a smaller body; detail names the limit.");
    public static readonly ErrorCode BodyTooSlow = new("body-too-slow", 408, "The body came too slowly",
        "The body did not arrive in time.",
        "Send the request again over a better connection.");

    // Members.
    public static readonly ErrorCode UnknownMember = new("unknown-member", 400, "A member is not known",
        "The body has a member that this place does not take; it may be misspelt.",
        "Use a name that expected lists, or leave the member out.");
    public static readonly ErrorCode DuplicateMember = new("duplicate-member", 400, "A member is there twice",
        "The same name stands twice in one object, so that it is not clear which value counts.",
        "Send it once.");
    public static readonly ErrorCode MissingMember = new("missing-member", 400, "A member is missing",
        "A member that is needed was not sent.",
        "Add the member at the pointer.");
    public static readonly ErrorCode WrongType = new("wrong-type", 400, "A value has the wrong type",
        "The value is not of the JSON type that this member takes; null is not a way to leave a member out.",
        "Send the type that expected names, or leave the member out where it is optional.");
    public static readonly ErrorCode UnitNeeded = new("unit-needed", 400, "A quantity came without its unit",
        "A shop may state this quantity in either system, and a unit is never guessed.",
        "Send text with the unit, as in \"64.5 g\", or { \"value\": 64.5, \"unit\": \"g\" }.");
    public static readonly ErrorCode UnreadableQuantity = new("unreadable-quantity", 400, "A quantity could not be read",
        "The number or the unit could not be read, or the unit belongs to another kind of quantity.",
        "Write a number with a decimal point, a space, and a unit that expected names.");
    public static readonly ErrorCode OutOfRange = new("out-of-range", 400, "A value is out of range",
        "The value lies outside the limits that expected names.",
        "Send a value within them. A value far outside often has the wrong unit.");
    public static readonly ErrorCode UnknownWord = new("unknown-word", 400, "A word is not on the list",
        "The member takes one of a few words, and this is none of them.",
        "Send one of the words that expected lists, in the same letters.");
    public static readonly ErrorCode Contradiction = new(RequestProblemCodes.Contradiction, 400, "Two members exclude each other",
        "Two members were sent of which only one can hold.",
        "Send one of the two.");
    public static readonly ErrorCode NotChosen = new("not-chosen", 400, "The part is not one that is chosen",
        "A belt belongs to the machine: picks neither propose nor change it, so that it cannot be excluded.",
        "Leave the belt out of exclude; exclude takes parts of the slots, shims and kits.");
    public static readonly ErrorCode WeightsSum = new("weights-sum", 400, "The weights do not sum to 1",
        "The weights share out the score, so together they must make 1.",
        "Send weights from 0 to 1 that sum to 1, as in 0.3 and 0.7.");
    public static readonly ErrorCode RatioTwice = new("ratio-twice", 400, "A ratio is there twice",
        "Two points of a shift curve have the same ratio.",
        "Send one point for each ratio.");
    public static readonly ErrorCode SpeedTwice = new("speed-twice", 400, "A speed is there twice",
        "Two points of a curve over vehicle speed have the same speed.",
        "Send one point for each speed.");
    public static readonly ErrorCode UnknownMachine = new("unknown-machine", 400, "The catalog has no such machine",
        "The request names a machine that the catalog does not hold.",
        "Take an id from GET /v1/machines.");
    public static readonly ErrorCode UnknownOutlet = new("unknown-outlet", 400, "The catalog has no such outlet",
        "The request names an outlet that the catalog does not hold.",
        "Take an id that expected lists, or leave outlet out to get answers without prices.");

    // The query of an address.
    public static readonly ErrorCode UnknownParameter = new("unknown-parameter", 400, "A query parameter is not known",
        "The address has a query parameter that this resource does not take; it may be misspelt.",
        "Use a name that expected lists, or leave the parameter out.");
    public static readonly ErrorCode DuplicateParameter = new("duplicate-parameter", 400, "A query parameter is there twice",
        "The same name stands twice in the address, so that it is not clear which value counts.",
        "Send it once.");
    public static readonly ErrorCode UnknownField = new("unknown-field", 400, "The parts have no such field",
        "A filter or the order names a field that this kind of part does not have; it may be misspelt.",
        "Use a field that expected lists.");
    public static readonly ErrorCode WrongFilter = new("wrong-filter", 400, "The field is not asked for in this way",
        "Numbers and quantities are asked for by a range, words by the word; curves and lists cannot be asked for.",
        "Write the filter as expected shows.");
    public static readonly ErrorCode EmptyRange = new("empty-range", 400, "A range is empty",
        "The least value of a range lies above its greatest.",
        "Exchange the two, or correct one.");
    public static readonly ErrorCode TooManyFilters = new("too-many-filters", 400, "There are too many filters",
        "The address has more filters than one list takes; each range and each word counts as one.",
        "Leave some out; expected names the limit.");
    public static readonly ErrorCode CursorInvalid = new("cursor-invalid", 400, "The cursor cannot be read",
        "The cursor is not one that this service gave out, or it was cut or changed on its way.",
        "Take nextCursor as it is, or ask without a cursor for the first page.");
    public static readonly ErrorCode CursorMismatch = new("cursor-mismatch", 400, "The cursor belongs to another list",
        "The cursor was given out for other filters or another order, or the catalog has changed since.",
        "Ask without a cursor for the first page; pages of two lists do not fit together.");

    // Found by the selection.
    public static readonly ErrorCode UnknownPart = new(RequestProblemCodes.UnknownPart, 400, "The catalog has no such part",
        "A set names a part that the catalog does not hold.",
        "Check the id; part numbers differ in a letter more often than not.");
    public static readonly ErrorCode WrongKind = new(RequestProblemCodes.WrongKind, 400, "The part belongs in another slot",
        "The id is in the catalog, but it is another kind of part.",
        "Name a part of the kind that the slot takes.");
    public static readonly ErrorCode UnknownHole = new(RequestProblemCodes.UnknownHole, 400, "The clutch has no such spring hole",
        "The driven clutch of this machine has no hole of that name.",
        "Name a hole that expected lists; GET /v1/machines/{id} shows them with their twist.");
    public static readonly ErrorCode StationMass = new(RequestProblemCodes.StationMass, 400, "The mass does not go into that station",
        "The flyweight has no such station, or the station takes no such mass.",
        "Use a station and a mass that expected lists.");
    public static readonly ErrorCode UnknownAdjusterStep = new(RequestProblemCodes.UnknownAdjusterStep, 400, "The ramp has no such step",
        "The flyweight's adjuster has no step of that name, or the flyweight has no adjuster.",
        "Name a step that expected lists, or leave adjusterStep out.");
    public static readonly ErrorCode TooManyShims = new(RequestProblemCodes.TooManyShims, 400, "The clutch does not take so many shims",
        "More shims are said to lie under the drive spring than the clutch takes.",
        "Send at most the number that expected names.");
    public static readonly ErrorCode FittedNeeded = new(RequestProblemCodes.FittedNeeded, 400, "The fitted parts are needed",
        "The catalog does not know what this machine has fitted, so there is nothing to compare with.",
        "Send the whole fitted set.");
    public static readonly ErrorCode BaselineNeeded = new(RequestProblemCodes.BaselineNeeded, 400, "A measured run is needed",
        "The profile of this machine is too coarse for absolute rpm without a measured run.",
        "Send baseline: the rpm at which it engages now and the rpm that it holds at full throttle; or ask for changes, engagementChangeRpm and shiftChangeRpm.");
    public static readonly ErrorCode BaselineUnusable = new(RequestProblemCodes.BaselineUnusable, 400, "The measured run cannot be used",
        "The model cannot be tied to this run: with these parts it cannot have measured so.",
        "Check the rpm, the ratios and the parts of the baseline.");
    public static readonly ErrorCode ProfileNotMeasured = new(RequestProblemCodes.ProfileNotMeasured, 400, "The machine profile is not measured",
        "The profile rests on values that are usual for the class of clutch, not on this one.",
        "Measure the values that expected lists, or ask for changes against what is fitted: engagementChangeRpm and shiftChangeRpm.");
    public static readonly ErrorCode MachineImpossible = new(RequestProblemCodes.MachineImpossible, 400, "The machine profile cannot be built",
        "The geometry of the profile contradicts itself, as in a belt too short for its shafts.",
        "Have the keeper of the catalog check the values that expected names.");
    public static readonly ErrorCode KeptPartDoesNotFit = new(RequestProblemCodes.KeptPartDoesNotFit, 400, "A kept part does not fit",
        "A slot is kept, and the part that is fitted there breaks a fit rule.",
        "Leave the slot out of keep, or correct the fitted set.");
    public static readonly ErrorCode PartUnusable = new(RequestProblemCodes.PartUnusable, 400, "The part cannot be computed",
        "The catalog knows too little of the part, or nothing over the travel that this machine needs, or the hole unwinds it.",
        "Name another part, or the hole that expected names, or have the keeper of the catalog complete its values.");
    public static readonly ErrorCode EngagementNotByBelt = new(RequestProblemCodes.EngagementNotByBelt, 400, "The belt does not start this machine",
        "An engagement rpm, or a weight or tolerance of one, was sent for a machine that a separate clutch or a one-way hub starts.",
        "Leave it out; the shift curve alone is answered.");
    public static readonly ErrorCode EngagementNeeded = new(RequestProblemCodes.EngagementNeeded, 400, "An engagement rpm is needed",
        "The drive clutch of this machine takes the belt at an engagement rpm, and none was sent.",
        "Send engagementRpm.");
    public static readonly ErrorCode OutletNeeded = new(RequestProblemCodes.OutletNeeded, 400, "An outlet is needed",
        "Stock, a price ceiling or an order by one of them was asked for, and no outlet says what it has and asks.",
        "Name an outlet.");
    public static readonly ErrorCode TargetUnclear = new(RequestProblemCodes.TargetUnclear, 400, "The target is not clear",
        "At some ratio no engine speed meets the line over vehicle speed, or several do; or a change is asked of fitted parts that do not shift there.",
        "Draw the line flatter, or send shiftCurve over ratio; for a change, check the fitted parts.");
    public static readonly ErrorCode TooManyCombinations = new(RequestProblemCodes.TooManyCombinations, 400, "There are too many combinations",
        "More sets fit than the service searches in one request.",
        "Keep slots with keep, or name an outlet, so that fewer parts are tried.");

    // Many at once.
    public static readonly ErrorCode LinesNeeded = new("lines-needed", 415, "The body must be lines of JSON",
        "A bulk run has no body of media type application/x-ndjson in UTF-8, or the body is compressed.",
        "Send Content-Type: application/x-ndjson and one JSON object on each line, uncompressed and in UTF-8.");
    public static readonly ErrorCode GridTooLarge = new("grid-too-large", 400, "The grid has too many points",
        "The values of all axes together make more points than one line may have.",
        "Take fewer values or wider steps, or share the grid out over several lines.");
    public static readonly ErrorCode TooManyAnswers = new("too-many-answers", 413, "The run has too many answers",
        "The lines and grids of the run make more answers than one run gives; it ended with the greatest number.",
        "Send the same lines again with fromLine one greater than lastLine.");
    public static readonly ErrorCode TooManyRuns = new("too-many-runs", 503, "There are too many bulk runs",
        "As many bulk runs as the service takes at once are under way.",
        "Send the run again when another has ended, or put the lines of several runs into one.");
    public static readonly ErrorCode ServiceStopping = new("service-stopping", 503, "The service is being stopped",
        "The service was told to end while the run was under way; it answered what it had begun.",
        "When the service runs again, send the same lines with fromLine one greater than lastLine.");

    // Addresses and methods.
    public static readonly ErrorCode UnknownRoute = new("unknown-route", 404, "There is nothing at this address",
        "The path is not one that the service answers.",
        "See /docs/api/ for every path.");
    public static readonly ErrorCode MachineNotFound = new("machine-not-found", 404, "There is no such machine",
        "The path names a machine that the catalog does not hold.",
        "Take an id from GET /v1/machines.");
    public static readonly ErrorCode PartNotFound = new("part-not-found", 404, "There is no such part",
        "The path names a part that the catalog does not hold.",
        "Check the id; part numbers differ in a letter more often than not.");
    public static readonly ErrorCode PickNotFound = new("pick-not-found", 404, "There is no such pick",
        "The id was never given out here, or the stored answer expired long ago.",
        "Check the id, or ask again with POST /v1/picks.");
    public static readonly ErrorCode PickExpired = new("pick-expired", 410, "The pick is past its expiry",
        "The stored answer was not read for so long that it expired.",
        "Ask again with POST /v1/picks: the same question of the same catalog has the same id.");
    public static readonly ErrorCode MethodNotAllowed = new("method-not-allowed", 405, "The method is not allowed here",
        "The address exists, but not for this method.",
        "Use a method that the Allow header lists.");
    public static readonly ErrorCode BadHttp = new("bad-http", 400, "The request could not be handled",
        "The request breaks HTTP or asks for something that the service does not do.",
        "Compare the request with the API document.");

    // Who may, and how much.
    public static readonly ErrorCode KeyNeeded = new("key-needed", 401, "A key is needed",
        "The service does not answer this without a key, and none was sent.",
        "Send a key as the page of keys shows; the operator of the service makes them.");
    public static readonly ErrorCode KeyInvalid = new("key-invalid", 401, "The key does not count",
        "The key is not one of this service, was revoked or has expired, or was not sent as keys are sent; detail tells which.",
        "Correct how it is sent, or ask the operator for another. Where no key is needed, leave it out.");
    public static readonly ErrorCode ScopeTooSmall = new("scope-too-small", 403, "The key does not allow this",
        "The key counts, but its scope does not reach so far.",
        "Use a key of the scope that detail names.");
    public static readonly ErrorCode OriginNotAllowed = new("origin-not-allowed", 403, "The key is not for this origin",
        "A publishable key was sent from a web page that it is not bound to, or by no page at all.",
        "Use it on the pages that it was made for; the operator makes a key for another origin.");
    public static readonly ErrorCode TooManyRequests = new("too-many-requests", 429, "Too many requests were sent",
        "A key or an address has sent more requests than its limit allows, or has too many bulk runs under way; detail names the limit.",
        "Wait as long as Retry-After says; RateLimit tells with every answer how many are left. Many questions go into one bulk run.");

    // The service.
    public static readonly ErrorCode TooBusy = new("too-busy", 503, "All places are taken",
        "As many answers are computed and waited for as the service takes in; this request was sent away at once.",
        "Ask again after the time that Retry-After tells, or send many questions as one bulk run, which waits.");
    public static readonly ErrorCode CatalogNotLoaded = new("catalog-not-loaded", 503, "No catalog is loaded",
        "The service runs, but holds no catalog yet.",
        "Import a catalog, or wait until GET /health/ready answers 200.");
    public static readonly ErrorCode TookTooLong = new("took-too-long", 503, "The answer took too long",
        "The search, with its wait for a free processor, was stopped at its time limit; nothing of it is kept.",
        "Keep slots with keep or ask for fewer ratioPoints, so that less is searched; or ask again when fewer others do.");
    public static readonly ErrorCode InternalError = new("internal-error", 500, "Something went wrong inside the service",
        "A fault of the service, not of the request; its log holds the cause.",
        "Try again later, and tell the operator when it stays.");

    public static readonly IReadOnlyList<ErrorCode> All =
    [
        InvalidRequest, MalformedJson, TooDeep, JsonNeeded, BodyTooLarge, BodyTooSlow,
        UnknownMember, DuplicateMember, MissingMember, WrongType, UnitNeeded, UnreadableQuantity, OutOfRange,
        UnknownWord, Contradiction, NotChosen, WeightsSum, RatioTwice, SpeedTwice, UnknownMachine, UnknownOutlet,
        UnknownParameter, DuplicateParameter, UnknownField, WrongFilter, EmptyRange, TooManyFilters, CursorInvalid,
        CursorMismatch,
        UnknownPart, WrongKind, UnknownHole, StationMass, UnknownAdjusterStep, TooManyShims, FittedNeeded,
        BaselineNeeded, BaselineUnusable, ProfileNotMeasured, MachineImpossible, KeptPartDoesNotFit, PartUnusable, EngagementNotByBelt,
        EngagementNeeded, OutletNeeded, TargetUnclear, TooManyCombinations,
        LinesNeeded, GridTooLarge, TooManyAnswers, TooManyRuns, ServiceStopping,
        UnknownRoute, MachineNotFound, PartNotFound, PickNotFound, PickExpired, MethodNotAllowed, BadHttp,
        KeyNeeded, KeyInvalid, ScopeTooSmall, OriginNotAllowed, TooManyRequests,
        TooBusy, CatalogNotLoaded, TookTooLong, InternalError,
    ];

    private static readonly FrozenDictionary<string, ErrorCode> ByCode = All.ToFrozenDictionary(c => c.Code);

    /// <summary>The entry of a code that another room answered with.</summary>
    public static ErrorCode Of(string code) => ByCode[code];

    /// <summary>The entry for a status that no code of ours caused.</summary>
    public static ErrorCode OfStatus(int status) => status switch
    {
        404 => UnknownRoute,
        405 => MethodNotAllowed,
        408 => BodyTooSlow,
        413 => BodyTooLarge,
        415 => JsonNeeded,
        >= 500 => InternalError,
        _ => BadHttp,
    };
}
