using System.Text.Json;
using PartPicker.Api.Wire;
using PartPicker.Parts;

namespace PartPicker.Api.Docs;

/// <summary>What stands at the root: what this is, and where to go.</summary>
internal static class StartPage
{
    private static readonly JsonSerializerOptions Readable = new(WireJson.Options) { WriteIndented = true };

    /// <summary>The page; where a key is needed it tells nothing of the catalog. Unlike the other pages it changes with it.</summary>
    public static TaggedAnswer Show(CatalogSnapshot? current, bool isOpen, HostString host) =>
        Page(isOpen ? current : null, host, isOpen ? "<p>No catalog is loaded yet.</p>" : KeyNeeded) with { Fresh = TimeSpan.Zero };

    private const string KeyNeeded =
        "<p>What the catalog holds is told to those who send <a href=\"/docs/keys\">a key</a>.</p>";

    private static TaggedAnswer Page(CatalogSnapshot? catalog, HostString host, string without) => HtmlPage.Of("Part Picker",
        $"""
        <p>Part Picker picks clutch parts for belt-type CVTs of off-road machines.
        It computes each part from first principles and ranks combinations of drive spring, flyweights,
        driven spring, spring hole and helix for the engagement rpm and the shift curve that you want.</p>
        <p>It computes; a qualified technician decides.</p>
        <h2>Ask it</h2>
        {Asked(catalog)}
        <pre tabindex="0"><code>curl http://{HtmlPage.Encode(host.Value ?? "")}/v1/picks \
          -H "Content-Type: application/json" \
          -d '{HtmlPage.Encode(Question(catalog))}'</code></pre>
        <h2>Look around</h2>
        <ul>
        <li><a href="/docs/api/">The API</a>, with examples that you can send from the page</li>
        <li><a href="{ApiDocument.Path}">The API as an OpenAPI document</a></li>
        <li><a href="/docs/recipes">Recipes</a> for scripts and for a dealer's page, and <a href="/docs/bulk">many questions in one run</a></li>
        <li><a href="/docs/versioning">How long an answer stays the same</a>, and what may change</li>
        <li><a href="/docs/errors">Every error code</a>, and what to do about it</li>
        <li><a href="/docs/keys">Keys and limits</a>: who may ask, and how much</li>
        <li><a href="/docs/fit">Every rule of fit</a>, and what it needs to know</li>
        <li><a href="/docs/fields">Every field of a catalog</a>, with its range and an example</li>
        <li><a href="/docs/model/shift-curve">The model</a>: the relation behind every number, with worked examples</li>
        <li><a href="/docs/limits">What the model does not know</a>, and how far to trust an answer</li>
        <li><a href="/docs/glossary">Every term</a>, in the trade's words</li>
        <li><a href="/docs/sources">The books and standards</a> behind the formulas</li>
        <li><a href="/docs/search">How every set is covered</a> without trying it</li>
        <li><a href="/v1/machines">The machines of the catalog</a>, as JSON</li>
        <li><a href="/v1/parts?limit=20">The parts of the catalog</a>, likewise</li>
        <li><a href="/health/ready">Whether the service is ready</a>, as JSON</li>
        </ul>
        {(catalog is null ? without : Machines(catalog))}
        """);

    private static string Question(CatalogSnapshot? catalog)
    {
        PickRequestWire question = (catalog is null ? null : SampleQuestion.Of(catalog)) ?? new PickRequestWire
        {
            Machine = "ID", Targets = new TargetsWire { EngagementRpm = 2_100, ShiftRpm = 7_900 },
        };
        return JsonSerializer.Serialize(question, Readable);
    }

    private static string Asked(CatalogSnapshot? catalog) =>
        catalog is null || SampleQuestion.Of(catalog) is not { Altitude: { } altitude } question
            ? "<p>Which parts let this machine engage and hold these rpm?</p>"
            : $"<p>A measured run says what {HtmlPage.Encode(question.Machine)} holds where it was made. Which parts hold the same at "
                + $"{altitude.Value:0} {altitude.Unit}, where the air is thin?</p>";

    private static string Machines(CatalogSnapshot catalog)
    {
        IEnumerable<string> items = catalog.Machines.Select(profile => Item(profile.Machine));
        return $"<h2>Machines</h2>\n<ul>\n{string.Join('\n', items)}\n</ul>";
    }

    private static string Item(Machine machine)
    {
        string name = HtmlPage.Encode(machine.Name.Length > 0 ? machine.Name : machine.Id);
        return $"""<li><a href="/v1/machines/{Uri.EscapeDataString(machine.Id)}">{name}</a></li>""";
    }
}
