using System.Text;
using PartPicker.Api.Picks;
using PartPicker.Api.Wire;
using Xunit;

namespace PartPicker.Service.Tests.Caching;

/// <summary>What caches may keep, and for how long; what a caller who brings a tag is answered.</summary>
[Collection(ServiceTests.Name)]
public sealed class CacheTests(Service service)
{
    private const string Asks = "public, no-cache";
    private const string Question = """
        {
          "machine": "valley-two-seater", "targets": { "engagementRpm": 2210, "shiftRpm": 7650 },
          "keep": ["drivenSpring", "hole", "helix", "driveSpring"], "ratioPoints": 3, "count": 2
        }
        """;

    private static readonly string OfProgram = $"public, max-age={TaggedAnswer.FreshOfProgram.TotalSeconds}";

    /// <summary>Every kind of answer to GET: what depends on the catalog in force is asked for each time.</summary>
    public static TheoryData<string, string> Reads => new()
    {
        { "/v1/machines", Asks },
        { "/v1/machines?use=snow", Asks },
        { "/v1/machines/valley-two-seater?units=inch", Asks },
        { "/v1/parts?kind=helix&limit=2", Asks },
        { "/v1/parts/ds-96-201?outlet=valley-counter", Asks },
        { "/health/ready", Asks },
        { "/", Asks },
        { "/docs/errors", OfProgram },
        { "/docs/limits", OfProgram },
        { "/docs/pages.css", OfProgram },
        { "/openapi/v1.json", OfProgram },
        { "PICK", $"public, max-age={KeptPick.FreshWhileCurrent.TotalSeconds}" },
    };

    [Theory]
    [MemberData(nameof(Reads))]
    public async Task An_answer_says_how_long_it_may_be_kept_and_is_the_same_again(string path, string cacheControl)
    {
        path = await AddressOf(path);
        Answer first = await service.GetAsync(path);
        Answer second = await service.GetAsync(path);

        Assert.Equal((200, cacheControl), (first.Status, first.Header("Cache-Control")));
        Assert.Equal(first.Body, second.Body);
        Assert.Matches("^\"[0-9a-f]{32}\"$", first.Header("ETag"));
        Assert.Equal(first.Header("ETag"), second.Header("ETag"));
    }

    [Theory]
    [MemberData(nameof(Reads))]
    public async Task A_known_tag_gets_304_whichever_way_it_is_sent(string path, string cacheControl)
    {
        path = await AddressOf(path);
        string tag = (await service.GetAsync(path)).Header("ETag")!;

        foreach (string known in new[] { tag, "W/" + tag, $"\"a\", W/\"b\", {tag}", $"W/{tag},\"c\"", "*" })
        {
            foreach (HttpMethod method in new[] { HttpMethod.Get, HttpMethod.Head })
            {
                Answer answer = await service.SendAsync(method, path, ifNoneMatch: known);

                Assert.Equal((304, 0), (answer.Status, answer.Body.Length));
                Assert.Equal((tag, cacheControl), (answer.Header("ETag"), answer.Header("Cache-Control")));
            }
        }

        foreach (string other in new[] { "\"a\"", "W/\"b\", \"c\"", tag.Trim('"'), tag[..^1], "" })
            Assert.Equal(200, (await service.GetAsync(path, other)).Status);
    }

    // No header chooses between forms of an answer, so that no cache need tell them apart by one.
    [Theory]
    [MemberData(nameof(Reads))]
    public async Task No_header_of_a_request_changes_an_answer(string path, string cacheControl)
    {
        path = await AddressOf(path);
        Answer plain = await service.GetAsync(path);
        using HttpRequestMessage request = new(HttpMethod.Get, path);
        request.Headers.Add("Accept", "text/html;q=0.1, application/xml");
        request.Headers.Add("Accept-Language", "de");
        request.Headers.Add("Accept-Encoding", "gzip, br");
        request.Headers.Add("User-Agent", "Mozilla/5.0");
        using HttpResponseMessage response = await service.Client.SendAsync(request);
        Answer other = await Answer.ReadAsync(response);

        Assert.Equal(plain.Body, other.Body);
        Assert.Equal((plain.MediaType, cacheControl), (other.MediaType, other.Header("Cache-Control")));
        Assert.Contains(plain.Header("Vary"), new[] { null, "Origin" }); // Whose page may read it is no matter of its bytes.
        Assert.Null(plain.Header("Content-Encoding"));
    }

    [Theory]
    [InlineData("/v1/parts/ds-0-0", 404)]
    [InlineData("/v1/machines?use=snow&use=mud", 400)]
    [InlineData("/v1/picks/0", 404)]
    [InlineData("/v1/nowhere", 404)]
    public async Task A_problem_is_kept_by_nobody(string path, int status)
    {
        Answer answer = await service.GetAsync(path, "*");

        Assert.Equal((status, "no-store"), (answer.Status, answer.Header("Cache-Control")));
        Assert.Null(answer.Header("ETag"));
    }

    [Fact]
    public async Task An_answer_to_POST_has_a_tag_and_is_never_304()
    {
        const string body = """{ "machine": "valley-two-seater", "ratioPoints": 3 }""";
        Answer first = await service.PostAsync("/v1/predictions", body);

        foreach (string known in new[] { first.Header("ETag")!, "*" })
        {
            Answer again = await service.SendAsync(
                HttpMethod.Post, "/v1/predictions", new StringContent(body, Encoding.UTF8, "application/json"), known);
            Assert.Equal((200, first.Header("ETag")), (again.Status, again.Header("ETag")));
            Assert.Equal(first.Body, again.Body);
        }
    }

    private async Task<string> AddressOf(string path) =>
        path == "PICK" ? (await service.PostAsync("/v1/picks", Question)).Header("Location")! : path;
}
