namespace PartPicker.Service.Tests;

/// <summary>A service that has answered as many requests as it may.</summary>
public sealed class SpentService : Service
{
    public SpentService()
    {
        Options = new Dictionary<string, string> { ["limit"] = "requests-local=1" };
        using HttpResponseMessage only = Client.GetAsync(new Uri("/v1/machines", UriKind.Relative)).GetAwaiter().GetResult();
        only.EnsureSuccessStatusCode();
    }
}
