using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>Which machines a list shall hold; what is null does not matter.</summary>
internal sealed record MachineFilter(
    string? Use, int? Year, DriveFamily? DriveFamily, DrivenFamily? DrivenFamily, StartDevice? StartDevice, string? Text)
{
    private const int FirstYear = 1950;
    private const int LastYear = 2100;

    public static MachineFilter Read(QueryReader query)
    {
        var filter = new MachineFilter(
            query.Text("use", "a word for the use of a machine"),
            query.Count("year", FirstYear, LastYear),
            query.Word("driveFamily", Enum.GetValues<DriveFamily>()),
            query.Word("drivenFamily", Enum.GetValues<DrivenFamily>()),
            query.Word("startDevice", Enum.GetValues<StartDevice>()),
            query.Text("text", "words that stand in id or name"));
        query.RefuseOthers("one of: use, year, driveFamily, drivenFamily, startDevice, text");
        return filter;
    }

    public bool Matches(MachineProfile profile) =>
        (Use is null || string.Equals(Use, profile.Machine.Use, StringComparison.OrdinalIgnoreCase))
        && (Year is null || (!(profile.Machine.FromYear > Year) && !(profile.Machine.ToYear < Year)))
        && (DriveFamily is null || profile.DriveClutch.Family == DriveFamily)
        && (DrivenFamily is null || profile.DrivenClutch.Family == DrivenFamily)
        && (StartDevice is null || profile.DriveClutch.StartDevice == StartDevice)
        && (Text ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries).All(word =>
            profile.Machine.Id.Contains(word, StringComparison.OrdinalIgnoreCase)
            || profile.Machine.Name.Contains(word, StringComparison.OrdinalIgnoreCase));
}
