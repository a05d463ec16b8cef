using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Docs;

/// <summary>What the parameters of an address mean, and their words where they have a list.</summary>
internal static class ParameterText
{
    public static (string Text, IReadOnlyList<string>? Words) Of(string name) => name switch
    {
        "kind" => ("One kind of part; all kinds when left out.", [.. PartListing.Kinds.Select(k => WireJson.Word(k))]),
        "fitsMachine" => ("Only parts that keep every rule that can be checked on this machine, by id.", null),
        "outlet" => ("The outlet whose price and stock are shown, by id.", null),
        "inStock" => ("true: only parts that the outlet has in stock.", ["true", "false"]),
        "text" => ("Words that must all stand in the id or the name.", null),
        "sort" => ("The field that orders the list, with - before it for falling order; id when left out.", null),
        "limit" => ($"Most parts on a page, 1 to {PartQuery.MaxLimit}; {PartQuery.StandardLimit} when left out.", null),
        "cursor" => ("nextCursor of the page before.", null),
        "use" => ("A use of machines, as in utility.", null),
        "year" => ("A model-year that the machine covers.", null),
        "driveFamily" => ("How the flyweights push.", Words<DriveFamily>()),
        "drivenFamily" => ("What closes the driven clutch.", Words<DrivenFamily>()),
        "startDevice" => ("What starts the machine moving.", Words<StartDevice>()),
        _ => ("The id, as another answer gave it.", null),
    };

    private static string[] Words<T>() where T : struct, Enum => [.. Enum.GetValues<T>().Select(WireJson.Word)];
}
