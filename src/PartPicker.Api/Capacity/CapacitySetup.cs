using Microsoft.AspNetCore.RateLimiting;
using Microsoft.Extensions.Options;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Picks;

namespace PartPicker.Api.Capacity;

/// <summary>Puts the limits of the service before whatever it serves.</summary>
internal static class CapacitySetup
{
    /// <summary>The key of the places for predictions, among the services.</summary>
    public const string PredictionPlaces = "predictions";

    public static void AddCapacity(this IServiceCollection services)
    {
        services.AddSingleton<RateLimits>();
        services.AddRateLimiter(_ => { });
        services.AddSingleton<IConfigureOptions<RateLimiterOptions>>(host =>
            new ConfigureOptions<RateLimiterOptions>(limiter =>
            {
                RateLimits limits = host.GetRequiredService<RateLimits>();
                limiter.GlobalLimiter = limits.All;
                limiter.AddPolicy(ServiceLimits.BulkRunsPerCaller.Name, limits.BulkRuns);
                limiter.OnRejected = async (refused, _) =>
                    await limits.Refuse(refused.HttpContext, refused.Lease).ExecuteAsync(refused.HttpContext);
            }));
        services.AddSingleton(host => SearchGate.Standard(host.GetRequiredService<ServiceOptions>()));
        services.AddKeyedSingleton(PredictionPlaces, (host, _) =>
        {
            ServiceOptions options = host.GetRequiredService<ServiceOptions>();
            return new Places(
                options.Of(ServiceLimits.Predictions), options.Of(ServiceLimits.PredictionsWaiting),
                ServiceLimits.Predictions.Name);
        });
    }

    public static void UseRateLimits(this WebApplication app)
    {
        RateLimits limits = app.Services.GetRequiredService<RateLimits>();
        app.Use((http, next) =>
        {
            if (http.GetEndpoint()?.Metadata.GetMetadata<DisableRateLimitingAttribute>() is null)
            {
                http.Response.OnStarting(() =>
                {
                    limits.Tell(http);
                    return Task.CompletedTask;
                });
            }

            return next(http);
        });
        app.UseRateLimiter();
    }
}
