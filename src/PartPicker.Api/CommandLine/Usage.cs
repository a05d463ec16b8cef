using PartPicker.Api.Capacity;
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
        dotnet run -c Release --project src/PartPicker.Api -- key create|list|revoke [options]

          --once         answer the sample question and end
          --quiet        serve without asking the sample question
          --port N       listen on this port ({ServiceOptions.StandardPort}); a busy one moves on to the next, 0 takes any
          --listen IP    listen at this address (127.0.0.1); beyond this machine every request needs a key
          --behind-proxy a proxy on this machine passes requests on: every one needs a key, and X-Forwarded-For counts
          --limit NAME=N change a limit; docs/keys.md explains them:
                         {string.Join(", ", ServiceLimits.All.Take(5).Select(limit => limit.Name))},
                         {string.Join(", ", ServiceLimits.All.Skip(5).Select(limit => limit.Name))}
          --data DIR     keep the store here (.data in the repository)
          --catalog DIR  import this catalog; without it an empty store takes catalog-samples
          --help         show this

          key create --scope read|catalog|admin [--name TEXT] [--expires 2031-12-31|90d] [--origin URL]...
                         make a key and print it, this once; with --origin it is one for web pages
          key list       show every key, never the key itself
          key revoke ID  take a key out of use; each of the three takes --data DIR

          docs NAME      print a page of reference, which is written from the program itself
        """;
}
