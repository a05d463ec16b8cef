using System.ComponentModel;
using System.Diagnostics;
using System.Text.Json.Nodes;
using PartPicker.Service.Tests.CommandLine;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>The dealer's page of docs/recipes.md in a browser, on a screen of 360 px, answered by the service.</summary>
public sealed class DealerPageTests : IDisposable
{
    private const string Browser = "chromium";
    private const string RidgeArm = "fw-ridge-41,\"Ridge arm, 41 g body, as fitted to the ridge climber\",set,3,,ridge-drive 2014-2023,41,55 mm,";

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    // The page stands in a frame as narrow as a telephone; what a person would do with it is done from outside.
    private const string Visit = $$"""
        <!doctype html>
        <iframe id="frame" src="/" style="width: 360px; height: 740px; border: 0"></iframe>
        <script>
        const until = async holds => {
          for (const end = Date.now() + 20000; !holds(); await new Promise(next => setTimeout(next, 20)))
            if (Date.now() > end)
              throw new Error(`It never came that ${holds}`);
        };
        document.getElementById("frame").onload = async event => {
          const page = event.target.contentDocument;
          const get = id => page.getElementById(id);
          const seen = text => seenTexts.includes(text) || seenTexts.push(text);
          let seenTexts = [];
          new MutationObserver(() => seen(get("status").textContent)).observe(get("status"), { childList: true });
          const ask = async values => {
            seenTexts = [];
            for (const id in values)
              get(id).value = values[id];
            page.querySelector("button").click();
            await until(() => get("list").getAttribute("aria-busy") === "false");
            return {
              texts: seenTexts,
              sets: [...get("list").children].map(set => set.innerText),
              across: page.documentElement.scrollWidth,
              cautions: page.querySelectorAll("details").length,
            };
          };
          try {
            await until(() => get("machine").options.length > 0);
            const report = {
              machines: [...get("machine").options].map(option => option.value),
              unlabelled: [...page.querySelectorAll("input, select")].filter(field => field.labels.length === 0).length,
              language: page.documentElement.lang,
              status: get("status").getAttribute("role"),
              found: await ask({ machine: "valley-two-seater", altitude: "1500" }),
              slow: await ask({ altitude: "{{DealerSite.Slow}}".split(" ")[0] }),
              refused: await ask({ altitude: "9000" }),
              gone: await ask({ altitude: "{{DealerSite.OutOfReach}}".split(" ")[0] }),
              nothing: await ask({ machine: "ridge-climber", altitude: "0" }),
            };
            // Two questions, one hard upon the other.
            get("machine").value = "valley-two-seater";
            get("altitude").value = "{{DealerSite.Slow}}".split(" ")[0];
            page.querySelector("button").click();
            report.later = await ask({ machine: "ridge-climber", altitude: "0" });
            await new Promise(next => setTimeout(next, 4000));
            report.afterwards = { text: get("status").textContent, sets: get("list").children.length };
            await fetch("/report", { method: "POST", body: JSON.stringify(report) });
          } catch (fault) {
            await fetch("/report", { method: "POST", body: JSON.stringify({ fault: `${fault} Page says: ${get("status").textContent}` }) });
          }
        };
        </script>
        """;

    private readonly Recipe recipe = new("recipes.md");

    public void Dispose() => recipe.Dispose();

    [Fact]
    public async Task The_page_shows_ranked_sets_and_says_what_it_does_and_what_went_wrong()
    {
        // Without the arms that it has, nothing fits the ridge climber.
        string catalog = recipe.PathOf("catalog");
        Repository.CopySamples(catalog, (file, text) => file == "flyweights.csv"
            ? text.Replace(RidgeArm, RidgeArm.Replace(",55 mm,", ",56 mm,", StringComparison.Ordinal), StringComparison.Ordinal)
            : text);
        using ServiceProcess service = recipe.StartService("--catalog", catalog);
        await using DealerSite site = new(
            await service.AddressAsync(), address => recipe.Block("html").Replace($"http://{Recipe.Address}", address, StringComparison.Ordinal), Visit);
        await site.StartAsync();

        using Process browser = StartBrowser(site.Address + "/visit");
        string report;
        try
        {
            report = await site.Report.WaitAsync(Patience);
        }
        finally
        {
            browser.Kill(entireProcessTree: true);
            await browser.WaitForExitAsync();
        }

        AssertReport(JsonNode.Parse(report)!);
    }

    private static void AssertReport(JsonNode report)
    {
        Assert.True(report["fault"] is null, (string?)report["fault"]);
        Assert.Contains("valley-two-seater", report["machines"]!.AsArray().Select(machine => (string?)machine));
        Assert.Equal((0, "en", "status"), ((int)report["unlabelled"]!, (string)report["language"]!, (string)report["status"]!));

        string[] sets = Texts(report["found"]!["sets"]!);
        Assert.Equal(5, sets.Length);
        Assert.All(sets, set => Assert.Matches("spring.*\n+Engages at 2[0-9]{3} rpm, holds 7[0-9]{3} rpm at full shift\\.", set));
        Assert.Matches("\n+€[0-9]+\\.[0-9]{2}", sets[0]);
        Assert.Equal(5, (int)report["found"]!["cautions"]!);
        string[] said = Texts(report["found"]!["texts"]!);
        Assert.Equal(("Searching…", "5 sets, the best first. "), (said[0], said[^1]));

        Assert.Equal("Still searching. This can take half a minute…", Texts(report["slow"]!["texts"]!)[1]);
        Assert.Equal(5, report["slow"]!["sets"]!.AsArray().Count);
        AssertSaid("refused", "This cannot be answered. /altitude, sent as \"9000 m\": ");
        AssertSaid("gone", "The parts service cannot be reached. Please try again later.");
        AssertSaid("nothing", "Nothing fits. No flyweight of the catalog ");

        // The earlier of two questions is not answered after the later.
        AssertSaid("later", "Nothing fits. ");
        Assert.StartsWith("Nothing fits. ", (string)report["afterwards"]!["text"]!);
        Assert.Equal(0, (int)report["afterwards"]!["sets"]!);

        void AssertSaid(string step, string beginning)
        {
            Assert.Empty(report[step]!["sets"]!.AsArray());
            Assert.StartsWith(beginning, Texts(report[step]!["texts"]!)[^1]);
        }

        Assert.All(
            new[] { "found", "slow", "refused", "nothing" },
            step => Assert.True((int)report[step]!["across"]! <= 360, $"{step} is {report[step]!["across"]} px wide."));
    }

    private static string[] Texts(JsonNode list) => [.. list.AsArray().Select(text => (string)text!)];

    private Process StartBrowser(string address)
    {
        ProcessStartInfo start = new(Browser)
        {
            ArgumentList =
            {
                "--headless", "--disable-gpu", "--no-first-run", $"--user-data-dir={recipe.PathOf("browser")}",
                "--remote-debugging-port=0", // It stays until it is told to go.
                "--no-sandbox", // Whoever tests in a container is root there, which the sandbox refuses.
                address,
            },
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        try
        {
            Process browser = Process.Start(start)!;
            browser.BeginErrorReadLine();
            browser.BeginOutputReadLine();
            return browser;
        }
        catch (Win32Exception missing)
        {
            throw new InvalidOperationException($"The test needs {Browser}, as Debian's package of that name.", missing);
        }
    }
}
