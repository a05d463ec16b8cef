using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace PartPicker.Service.Tests.Docs;

/// <summary>
/// A dealer's web server: it has the page, passes what lies below /v1/ on to the service, and takes in what a browser reports
/// that was sent to /visit.
/// </summary>
internal sealed class DealerSite : IAsyncDisposable
{
    /// <summary>An altitude at which this server gives the service no answer.</summary>
    public const string OutOfReach = "1111 m";

    /// <summary>An altitude at which this server takes its time.</summary>
    public const string Slow = "1222 m";

    private static readonly TimeSpan SlowTime = TimeSpan.FromSeconds(3);

    private readonly WebApplication server;
    private readonly HttpClient service;
    private readonly TaskCompletionSource<string> report = new();

    /// <param name="serviceAddress">Where the service is.</param>
    /// <param name="page">The page, once this server's address is known.</param>
    /// <param name="visit">A page that visits it.</param>
    public DealerSite(Uri serviceAddress, Func<string, string> page, string visit)
    {
        service = new HttpClient { BaseAddress = serviceAddress };
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        server = builder.Build();
        server.MapGet("/", () => Results.Content(page(Address), "text/html; charset=utf-8"));
        server.MapGet("/visit", () => Results.Content(visit, "text/html; charset=utf-8"));
        server.MapPost("/report", async (HttpRequest request) =>
        {
            using StreamReader body = new(request.Body);
            report.TrySetResult(await body.ReadToEndAsync());
        });
        server.Map("/v1/{**rest}", PassOnAsync);
    }

    public string Address => server.Urls.Single();

    /// <summary>What the browser reports.</summary>
    public Task<string> Report => report.Task;

    public Task StartAsync() => server.StartAsync();

    public async ValueTask DisposeAsync()
    {
        await server.DisposeAsync();
        service.Dispose();
    }

    private async Task PassOnAsync(HttpContext http)
    {
        using StreamReader body = new(http.Request.Body);
        string sent = await body.ReadToEndAsync();
        if (sent.Contains(OutOfReach, StringComparison.Ordinal))
        {
            http.Abort();
            return;
        }

        if (sent.Contains(Slow, StringComparison.Ordinal))
            await Task.Delay(SlowTime, http.RequestAborted);
        using HttpRequestMessage request = new(new HttpMethod(http.Request.Method), $"{http.Request.Path}{http.Request.QueryString}");
        if (sent.Length > 0)
            request.Content = new StringContent(sent, null, "application/json");
        using HttpResponseMessage answer = await service.SendAsync(request, http.RequestAborted);
        http.Response.StatusCode = (int)answer.StatusCode;
        http.Response.ContentType = answer.Content.Headers.ContentType?.ToString();
        await answer.Content.CopyToAsync(http.Response.Body, http.RequestAborted);
    }
}
