using System.Net;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

[Collection(ServiceTests.Name)]
public sealed class PageTests(Service service)
{
    [Fact]
    public async Task The_start_page_leads_everywhere_and_every_link_answers()
    {
        string page = (await service.GetAsync("/")).Text;
        string[] links = [.. page.Split("href=\"").Skip(1)
            .Select(rest => rest[..rest.IndexOf('"')]).Where(link => link[0] == '/')];

        Assert.Superset(
            new HashSet<string>
            {
                "/docs/api/", "/docs/errors", "/docs/fit", "/docs/fields", "/docs/limits", "/openapi/v1.json", "/v1/machines", "/health/ready",
            },
            links.ToHashSet());
        foreach (string link in links.Distinct())
            Assert.InRange((await service.GetAsync(link)).Status, 200, 399);
    }

    [Theory]
    [InlineData("fit", "What a part must keep to fit", "<code>drive-spring-seat</code>")]
    [InlineData("fields", "The fields of a catalog", "<strong><code>id</code></strong>")]
    [InlineData("limits", "What the model does not know", "<a href=\"/docs/fit\">fit.md</a>")]
    [InlineData("glossary", "Glossary", "<td data-label=\"term\">twist rate</td>")]
    [InlineData("sources", "Sources", "<tr id=\"EN-13906-1\">")]
    [InlineData("model/springs", "Springs", "[<a href=\"/docs/sources#EN-13906-3\">EN 13906-3</a>]")]
    [InlineData("model/belt-path", "Path of the belt", "<desc id=\"belt-desc\">")]
    [InlineData("model/shift-curve", "Shift curve", "<math display=\"block\">")]
    public async Task A_page_of_reference_is_served_as_HTML(string name, string title, string holds)
    {
        Answer page = await service.GetAsync($"/docs/{name}");

        Assert.Equal((200, "text/html"), (page.Status, page.MediaType));
        Assert.Contains($"<h1>{title}</h1>", page.Text);
        Assert.Contains(holds, page.Text);
        Assert.DoesNotContain("!--", page.Text);
        Assert.Equal(page.Text.Split("<table>").Length, page.Text.Split("<div class=\"wide\" tabindex=\"0\"><table>").Length);
    }

    [Fact]
    public async Task The_question_of_the_start_page_is_answered_for_every_machine_that_may_come_first()
    {
        foreach (MachineProfile machine in SampleCatalog.Snapshot.Machines)
        {
            CatalogContents contents = SampleCatalog.Contents;
            CatalogItem[] alone = [.. contents.Items.Where(item => item is not Machine || item.Id == machine.Machine.Id)];
            CatalogSnapshot catalog = new("one", contents with { Items = alone });

            string page = Encoding.UTF8.GetString(await Body(StartPage.Show(catalog, true, new HostString("127.0.0.1:5180"))));
            string question = WebUtility.HtmlDecode(page.Split("-d '")[1].Split("'</code>")[0]);

            using JsonDocument json = JsonDocument.Parse(question);
            FaultList faults = new();
            PickRequest? request = PickRequestReader.Read(json.RootElement, catalog, faults);
            Assert.Empty(faults.Listed);

            // What the machine does where it was measured needs no other parts: it is asked for elsewhere.
            Assert.Equal(machine.OwnBaseline!.Air.AltitudeM + 1500, request!.Air.AltitudeM, 50.0);
            Assert.Empty(PartSelection.Pick(catalog, request! with
            {
                Keep = new HashSet<Slot> { Slot.DriveSpring, Slot.Flyweight, Slot.Helix },
                PointCount = 3,
            }).Problems);
        }

        static async Task<byte[]> Body(IResult result)
        {
            DefaultHttpContext http = new() { Response = { Body = new MemoryStream() } };
            await result.ExecuteAsync(http);
            return ((MemoryStream)http.Response.Body).ToArray();
        }
    }

    [Fact]
    public async Task The_API_page_and_its_parts_are_served_from_here()
    {
        Answer page = await service.GetAsync("/docs/api/index.html");

        Assert.Equal(200, page.Status);
        Assert.DoesNotContain("http://", page.Text.Replace("http://www.w3.org", "", StringComparison.Ordinal));
        Assert.Contains("/openapi/v1.json", (await service.GetAsync("/docs/api/index.js")).Text);
        Assert.Equal(200, (await service.GetAsync("/docs/api/swagger-ui-bundle.js")).Status);
        Assert.Equal(200, (await service.GetAsync("/docs/api/swagger-ui.css")).Status);
    }

    [Fact]
    public async Task The_API_page_stands_in_the_frame_of_the_others_and_links_to_its_parts()
    {
        string page = (await service.GetAsync("/docs/api/index.html")).Text;
        string errors = (await service.GetAsync("/docs/errors")).Text;

        Assert.Equal(Header(errors), Header(page));
        Assert.Contains("<a href=\"/\">Part Picker</a>", Header(page));
        Assert.Contains("name=\"viewport\"", page);
        Assert.DoesNotContain("%(", page);
        Assert.Contains("\"deepLinking\":true", (await service.GetAsync("/docs/api/index.js")).Text);
        Assert.Equal((200, "text/css"), await Style("/docs/api.css"));

        static string Header(string html) => html[html.IndexOf("<header>", StringComparison.Ordinal)..html.IndexOf("</header>", StringComparison.Ordinal)];

        async Task<(int, string?)> Style(string path)
        {
            Answer style = await service.GetAsync(path);
            return (style.Status, style.MediaType);
        }
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/docs/errors")]
    [InlineData("/docs/pages.css")]
    [InlineData("/openapi/v1.json")]
    [InlineData("/docs/api/index.html")]
    [InlineData("/v1/machines")]
    [InlineData("/v1/machines/valley-two-seater?units=inch")]
    [InlineData("/v1/machines/none-such")]
    [InlineData("/v1/machines?use=snow")]
    [InlineData("/v1/parts/ds-96-201")]
    [InlineData("/v1/parts?kind=helix&limit=2&sort=-helixDeg&outlet=quay-stores")]
    [InlineData("/v1/parts?kind=spring")]
    [InlineData("/health/live")]
    [InlineData("/health/ready")]
    [InlineData("/v1/nowhere")]
    public async Task HEAD_answers_as_GET_does_without_the_body(string path)
    {
        Answer get = await service.GetAsync(path);
        Answer head = await service.SendAsync(HttpMethod.Head, path);

        Assert.Equal(get.Status, head.Status);
        Assert.Empty(head.Body);
        Assert.Equal(get.Header("ETag"), head.Header("ETag"));
        Assert.Equal(get.Header("Content-Type"), head.Header("Content-Type"));
        Assert.Equal(get.Header("Link"), head.Header("Link"));
    }

    [Fact]
    public async Task A_browser_is_told_to_take_answers_for_what_they_are()
    {
        foreach (string path in new[] { "/", "/v1/machines", "/v1/nowhere" })
        {
            Answer answer = await service.GetAsync(path);
            Assert.Equal("nosniff", answer.Header("X-Content-Type-Options"));
            Assert.Contains("default-src 'self'", answer.Header("Content-Security-Policy"));
        }
    }
}
