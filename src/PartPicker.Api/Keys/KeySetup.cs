using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Cors.Infrastructure;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Picks;
using PartPicker.Api.Wire;
using PartPicker.Storage;

namespace PartPicker.Api.Keys;

/// <summary>Puts the keys before whatever is served.</summary>
internal static class KeySetup
{
    // A browser asks again after this, and learns that an origin is no longer allowed; the key itself is refused at once.
    private static readonly TimeSpan PreflightLifetime = TimeSpan.FromMinutes(10);

    /// <summary>What a page may send. No Authorization: a page holds no secret key.</summary>
    public static readonly IReadOnlyList<string> AllowedHeaders =
        [HeaderNames.ContentType, HeaderNames.IfNoneMatch, SentKey.Header];

    /// <summary>What a page may read, beside what browsers let every page read.</summary>
    public static readonly IReadOnlyList<string> ExposedHeaders =
    [
        HeaderNames.ETag, HeaderNames.Location, HeaderNames.Link, HeaderNames.RetryAfter, HeaderNames.WWWAuthenticate, KeptPick.StatusHeader,
        "RateLimit", "RateLimit-Policy", "Server-Timing", "Deprecation", "Sunset",
    ];

    public static void AddKeys(this IServiceCollection services)
    {
        services.AddSingleton<KeyRing>();
        services.AddSingleton<Access>();
        services.AddSingleton<IAuthorizationHandler>(host => host.GetRequiredService<Access>());
        services.AddAuthentication(KeyAuthentication.Scheme)
            .AddScheme<AuthenticationSchemeOptions, KeyAuthentication>(KeyAuthentication.Scheme, null);
        AuthorizationBuilder policies = services.AddAuthorizationBuilder().SetFallbackPolicy(Needs(KeyScope.Read));
        foreach (KeyScope scope in Enum.GetValues<KeyScope>())
            policies.AddPolicy(WireJson.Word(scope), Needs(scope));
        services.AddCors();
        services.AddSingleton<IConfigureOptions<CorsOptions>>(host => new ConfigureOptions<CorsOptions>(cors =>
            cors.AddDefaultPolicy(page => page
                .SetIsOriginAllowed(host.GetRequiredService<KeyRing>().Knows)
                .WithMethods(HttpMethods.Get, HttpMethods.Head, HttpMethods.Post)
                .WithHeaders([.. AllowedHeaders])
                .WithExposedHeaders([.. ExposedHeaders])
                .SetPreflightMaxAge(PreflightLifetime))));
    }

    /// <summary>Where a proxy passes requests on, the address that it tells is the caller's.</summary>
    public static void UseProxyAddress(this WebApplication app, ServiceOptions options)
    {
        if (!options.BehindProxy)
            return;
        app.UseForwardedHeaders(new ForwardedHeadersOptions
        {
            ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto,
        });
    }

    /// <summary>Finds out who asks, and answers browsers that ask on behalf of a page whether it may.</summary>
    public static void UseKeys(this WebApplication app)
    {
        app.Use((http, next) =>
        {
            http.Response.OnStarting(() =>
            {
                KeepFromOthers(http);
                return Task.CompletedTask;
            });
            return next(http);
        });
        app.UseCors();
        app.UseAuthentication();
    }

    /// <summary>The address needs a key of this scope, wherever the service listens.</summary>
    public static TBuilder NeedsScope<TBuilder>(this TBuilder endpoint, KeyScope scope)
        where TBuilder : IEndpointConventionBuilder =>
        endpoint.RequireAuthorization(WireJson.Word(scope));

    // No cache may give one's answer to another: what is allowed depends on the origin, also where none was sent; and what a
    // key opened is for its holder.
    private static void KeepFromOthers(HttpContext http)
    {
        IHeaderDictionary headers = http.Response.Headers;
        if (!headers.Vary.Contains(HeaderNames.Origin))
            headers.Append(HeaderNames.Vary, HeaderNames.Origin);
        if (KeyHolder.Of(http) is null || http.Response.GetTypedHeaders().CacheControl is not { NoStore: false } cache)
            return;
        (cache.Public, cache.Private) = (false, true);
        headers.CacheControl = cache.ToString();
    }

    private static AuthorizationPolicy Needs(KeyScope least) =>
        new AuthorizationPolicyBuilder().AddRequirements(new AccessRequirement(least)).Build();
}
