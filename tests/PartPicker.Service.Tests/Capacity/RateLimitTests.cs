using System.IO.Pipelines;
using System.Net;
using System.Net.Http.Headers;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using PartPicker.Api.CommandLine;
using PartPicker.Service.Tests.Keys;
using Xunit;
using static PartPicker.Service.Tests.Keys.KeyedServices;

namespace PartPicker.Service.Tests.Capacity;

public sealed class RateLimitTests
{
    private const string Shop = "https://shop.example";

    [Fact]
    public async Task A_key_has_its_number_of_requests_and_another_key_its_own()
    {
        using Service service = Public("requests-per-key=3");
        (string key, string another) = (service.AddKey(), service.AddKey());
        for (int left = 2; left >= 0; left--)
        {
            Answer answer = await service.AskAsync("GET /v1/machines", Bearer(key));
            Assert.Equal(200, answer.Status);
            Assert.Equal("\"requests-per-key\";q=3;w=60", answer.Header("RateLimit-Policy"));
            Assert.Equal($"\"requests-per-key\";r={left};t=20", answer.Header("RateLimit"));
        }

        Answer refused = await service.AskAsync("POST /v1/picks", Bearer(key));
        Assert.Equal((429, "too-many-requests"), (refused.Status, refused.Code));
        Assert.Equal("application/problem+json", refused.MediaType);
        Assert.InRange(int.Parse(refused.Header("Retry-After")!), 1, 20);
        Assert.Equal("\"requests-per-key\";r=0;t=20", refused.Header("RateLimit"));
        Assert.Equal("At most 3 requests in 60 s are answered (limit requests-per-key).", (string?)refused.Json["detail"]);

        Assert.Equal(200, (await service.AskAsync("GET /v1/machines", Bearer(another))).Status);
        Assert.Equal(200, (await service.AskAsync("GET /health/ready")).Status);
    }

    [Fact]
    public async Task Whoever_tries_keys_is_limited_by_address()
    {
        using Service service = Public("requests-per-address=2");
        string key = service.AddKey();
        using HttpClient guesser = service.From(IPAddress.Parse("2001:db8:1:2:3::4"));
        using HttpClient neighbour = service.From(IPAddress.Parse("2001:db8:1:3::4"));

        Assert.Equal(401, (await guesser.AskAsync("GET /v1/machines", Bearer("pps_guess"))).Status);
        Assert.Equal(401, (await guesser.AskAsync("GET /v1/machines")).Status);
        Answer refused = await guesser.AskAsync("GET /v1/machines", Bearer("pps_guess"));

        Assert.Equal((429, "too-many-requests"), (refused.Status, refused.Code));
        Assert.Equal("\"requests-per-address\";r=0;t=30", refused.Header("RateLimit"));
        Assert.Equal(401, (await neighbour.AskAsync("GET /v1/machines")).Status);
        // A key that counts has its own number, whatever else comes from its address.
        Assert.Equal(200, (await guesser.AskAsync("GET /v1/machines", Bearer(key))).Status);
        Assert.Equal(200, (await guesser.AskAsync("GET /health/live")).Status);
    }

    [Fact]
    public async Task A_publishable_key_is_limited_by_itself_and_by_the_address_of_each_visitor()
    {
        using Service service = Public();
        string key = service.AddKey("--scope", "read", "--origin", Shop);
        ServiceOptions few = new()
        {
            Listen = IPAddress.Any,
            Limits = new Dictionary<string, int> { ["requests-per-address"] = 2, ["requests-per-page-key"] = 4 },
        };
        using WebApplicationFactory<Program> limited = service.WithWebHostBuilder(builder => builder.ConfigureTestServices(
            services => services.Replace(ServiceDescriptor.Singleton(few))));
        using HttpClient visitor = limited.CreateClient();

        Answer answer = await visitor.AskAsync("GET /v1/machines", OfPage(key), From(Shop));
        Assert.Equal(
            "\"requests-per-address\";q=2;w=60, \"requests-per-page-key\";q=4;w=60", answer.Header("RateLimit-Policy"));
        Assert.Equal(
            "\"requests-per-address\";r=1;t=30, \"requests-per-page-key\";r=3;t=15", answer.Header("RateLimit"));

        await visitor.AskAsync("GET /v1/machines", OfPage(key), From(Shop));
        Answer refused = await visitor.AskAsync("GET /v1/machines", OfPage(key), From(Shop));
        Assert.Equal(429, refused.Status);
        Assert.Contains("requests-per-address", (string?)refused.Json["detail"]);
        // What a visitor sends in vain takes nothing from the key.
        Assert.Contains("\"requests-per-page-key\";r=2;t=15", refused.Header("RateLimit"));
    }

    [Fact]
    public async Task Its_own_machine_has_a_limit_too_with_a_name()
    {
        using Service service = new() { Options = new Dictionary<string, string> { ["limit"] = "requests-local=1" } };

        Assert.Equal("\"requests-local\";r=0;t=60", (await service.GetAsync("/v1/machines")).Header("RateLimit"));
        Assert.Equal("too-many-requests", (await service.GetAsync("/v1/machines")).Code);
        using Service generous = new();
        Assert.Equal("\"requests-local\";q=600000;w=60", (await generous.GetAsync("/v1/machines")).Header("RateLimit-Policy"));
    }

    [Fact]
    public async Task A_key_has_its_number_of_bulk_runs_at_once()
    {
        using Service service = Public("bulk-runs-per-caller=1");
        (string key, string another) = (service.AddKey(), service.AddKey());
        Pipe body = new();
        using HttpRequestMessage first = Run(key, new StreamContent(body.Reader.AsStream()));
        Task<HttpResponseMessage> running = service.Client.SendAsync(first, HttpCompletionOption.ResponseHeadersRead);
        await body.Writer.WriteAsync("{}\n"u8.ToArray());
        using HttpResponseMessage begun = await running;

        using HttpRequestMessage second = Run(key, new StringContent("{}\n"));
        using HttpResponseMessage response = await service.Client.SendAsync(second);
        Answer refused = await Answer.ReadAsync(response);
        using HttpRequestMessage ofAnother = Run(another, new StringContent("{}\n"));
        using HttpResponseMessage other = await service.Client.SendAsync(ofAnother);

        Assert.Equal((429, "too-many-requests", "10"), (refused.Status, refused.Code, refused.Header("Retry-After")));
        Assert.Contains("bulk-runs-per-caller", (string?)refused.Json["detail"]);
        Assert.Equal(HttpStatusCode.OK, other.StatusCode);

        await body.Writer.CompleteAsync();
        Assert.Contains("\"done\":true", await begun.Content.ReadAsStringAsync());
        using HttpRequestMessage third = Run(key, new StringContent("{}\n"));
        Assert.Equal(HttpStatusCode.OK, (await service.Client.SendAsync(third)).StatusCode);
    }

    private static HttpRequestMessage Run(string key, HttpContent body)
    {
        body.Headers.ContentType = MediaTypeHeaderValue.Parse("application/x-ndjson");
        HttpRequestMessage request = new(HttpMethod.Post, "/v1/bulk-predictions") { Content = body };
        request.Headers.Add("Authorization", $"Bearer {key}");
        return request;
    }
}
