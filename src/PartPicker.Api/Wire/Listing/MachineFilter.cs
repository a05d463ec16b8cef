using PartPicker.Api.Docs;
using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>Which machines are asked for.</summary>
/// <param name="Use">What it is used for, whatever the case; null: anything.</param>
/// <param name="Year">A model-year that it covers; null: any.</param>
/// <param name="Drive">How its flyweights push; null: any way.</param>
/// <param name="Driven">What closes its driven clutch; null: anything.</param>
/// <param name="Start">What starts it; null: anything.</param>
/// <param name="Text">Words that all stand in its id or name.</param>
internal sealed record MachineFilter(
    string? Use, int? Year, DriveFamily? Drive, DrivenFamily? Driven, StartDevice? Start,
    IReadOnlyList<string> Text)
{
    private const string UseName = "use";
    private const string YearName = "year";
    private const string DriveName = "driveFamily";
    private const string DrivenName = "drivenFamily";
    private const string StartName = "startDevice";
    private const string TextName = "text";

    /// <summary>The query parameters that are read here.</summary>
    public static readonly IReadOnlyList<QueryParameter> Parameters =
    [
        new(UseName, "What the machine is used for, in the word of the catalog.")
        {
            MaxLength = RequestLimits.MaxNameLength,
        },
        new(YearName, "A model-year that it covers; a machine without years covers every one.")
        {
            Range = (RequestLimits.MinYear, RequestLimits.MaxYear),
        },
        new(DriveName, "How the flyweights of its drive clutch push.") { Words = Words<DriveFamily>() },
        new(DrivenName, "What closes its driven clutch.") { Words = Words<DrivenFamily>() },
        new(StartName, "What starts it moving.") { Words = Words<StartDevice>() },
        new(TextName, "Words that must all stand in the id or the name, whatever the case.")
        {
            MaxLength = RequestLimits.MaxSearchTextLength,
        },
    ];

    /// <summary>Reads the filter; whatever is wrong with it joins the list of the reader.</summary>
    public static MachineFilter Read(QueryReader query) => new(
        query.Text(UseName, RequestLimits.MaxNameLength),
        query.Count(YearName, RequestLimits.MinYear, RequestLimits.MaxYear),
        query.Word<DriveFamily>(DriveName),
        query.Word<DrivenFamily>(DrivenName),
        query.Word<StartDevice>(StartName),
        query.Text(TextName, RequestLimits.MaxSearchTextLength)
            ?.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries) ?? []);

    public bool Matches(MachineProfile profile)
    {
        Machine machine = profile.Machine;
        return (Use is null || string.Equals(machine.Use, Use, StringComparison.OrdinalIgnoreCase))
            && (Year is not { } year || ((machine.FromYear ?? year) <= year && year <= (machine.ToYear ?? year)))
            && (Drive is null || profile.DriveClutch.Family == Drive)
            && (Driven is null || profile.DrivenClutch.Family == Driven)
            && (Start is null || profile.DriveClutch.StartDevice == Start)
            && Text.All(word => Contains(machine.Id, word) || Contains(machine.Name, word));
    }

    private static bool Contains(string text, string word) =>
        text.Contains(word, StringComparison.OrdinalIgnoreCase);

    private static string[] Words<T>() where T : struct, Enum => [.. Enum.GetValues<T>().Select(WireJson.Word)];
}
