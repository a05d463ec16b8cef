using PartPicker.Api.Docs;

namespace PartPicker.Api.CommandLine;

/// <summary>What the command line takes.</summary>
internal static class Usage
{
    /// <summary>Exit code for a command line that could not be read.</summary>
    public const int ExitCode = 2;

    public static readonly string Text = $"""
        Part Picker: picks clutch parts for belt-type CVTs.

        dotnet run -c Release --project src/PartPicker.Api -- [options]
        dotnet run -c Release --project src/PartPicker.Api -- docs {string.Join('|', ReferencePages.Names)}

          --once         answer the sample question and end
          --quiet        serve without asking the sample question
          --port N       listen on this port of 127.0.0.1 ({ServiceOptions.StandardPort});
                         a busy one moves on to the next, 0 takes any
          --data DIR     keep the store here (.data in the repository)
          --catalog DIR  import this catalog; without it an empty store takes catalog-samples
          --help         show this

          docs NAME      print a page of reference, which is written from the program itself
        """;
}
