using PartPicker.Api.Bulk;
using PartPicker.Api.Capacity;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Deprecations;
using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.Health;
using PartPicker.Api.Keys;
using PartPicker.Api.Machines;
using PartPicker.Api.Parts;
using PartPicker.Api.Picks;
using PartPicker.Api.Predictions;
using PartPicker.Api.StartUp;
using PartPicker.Api.Web;

if (args is [KeyCommand.Name, .. var keyArgs])
    return KeyCommand.Run(keyArgs, Console.Out, Console.Error);

(ServiceOptions? options, string? complaint) = ServiceOptions.Read(args);
if (options is null)
{
    Console.Error.WriteLine($"{complaint}{Environment.NewLine}{Environment.NewLine}{Usage.Text}");
    return Usage.ExitCode;
}

if (options.Help)
{
    Console.WriteLine(Usage.Text);
    return 0;
}

if (options.Page is { } page)
{
    Console.Write(ReferencePages.Find(page));
    return 0;
}

if (PortChoice.Find(options.Listen, options.Port, Console.Out) is not { } port)
{
    Console.Error.WriteLine(
        $"{PortChoice.MaxTries} ports from {options.Port} on are busy: name another with --port.");
    return 1;
}

WebApplicationBuilder builder = WebApplication.CreateBuilder([.. options.HostSettings]);
builder.Listen(options.Listen, port);
builder.LogFaultsOnly();
builder.Services.AddPartPicker(options);

WebApplication app = builder.Build();
app.UseProxyAddress(options);
app.UseSafetyHeaders();
app.UseHead();
app.UseProblems();
app.UseRouting();
app.UseKeys();
app.UseRateLimits();
app.UseDeprecations();
app.UseApiPage();
app.UseAuthorization();
app.MapPages();
app.MapApiDocument();
app.MapHealth();
app.MapMachines();
app.MapParts();
app.MapPredictions();
app.MapPicks();
app.MapBulk();

return await ServiceRun.RunAsync(app);
