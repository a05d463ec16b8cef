// A conversation with a running service, through a client that a generator made from the API document alone.
using System.Text;
using System.Text.Json;
using Microsoft.Kiota.Abstractions;
using Microsoft.Kiota.Abstractions.Authentication;
using Microsoft.Kiota.Http.HttpClientLibrary;
using Microsoft.Kiota.Http.HttpClientLibrary.Middleware.Options;
using PartPicker.Client;
using PartPicker.Client.Models;
using PartPicker.Client.V1.Machines;
using PartPicker.Client.V1.Parts;

using HttpClientRequestAdapter adapter = new(new AnonymousAuthenticationProvider()) { BaseUrl = args[0] };
PartPickerClient client = new(adapter);

// Machines, and one of them.
MachineList machines = Right(await client.V1.Machines.GetAsync(request =>
    request.QueryParameters.DriveFamilyAsGetDriveFamilyQueryParameterType = GetDriveFamilyQueryParameterType.ArmOnRoller));
string id = Right(Right(machines.Items).Single(machine => machine.Id == "valley-two-seater").Id);
Machine machine = Right(await client.V1.Machines[id].GetAsync());
Check(machine.Id == id, "another machine was answered");

// Every page of the springs.
HashSet<string> seen = [];
int total;
string? cursor = null;
do
{
    PartList page = Right(await client.V1.Parts.GetAsync(request =>
    {
        request.QueryParameters.KindAsGetKindQueryParameterType = GetKindQueryParameterType.DriveSpring;
        request.QueryParameters.Limit = 20;
        request.QueryParameters.Cursor = cursor;
    }));
    total = page.Total ?? 0;
    foreach (PartItem part in Right(page.Items))
        Check(seen.Add(Right(part.Id)), $"{part.Id} came twice");
    cursor = page.NextCursor;
}
while (cursor is not null);
Check(total > 20 && seen.Count == total, $"{seen.Count} of {total} springs came");

// What is fitted, and which parts would do better.
Prediction prediction = Right(await client.V1.Predictions.PostAsync(new PredictionRequest
{
    Machine = id,
    Altitude = new QuantityInput { String = "1500 m" },
    Temperature = new QuantityInput { QuantityInputMember1 = new QuantityInputMember1 { Value = 50, Unit = "°F" } },
    RatioPoints = 3,
}));
Check(Right(prediction.Curve).Count == 3, "the curve has other points");
PickAnswer pick = Right(await client.V1.Picks.PostAsync(new PickRequest
{
    Machine = id,
    Targets = new Targets { EngagementRpm = 2200, ShiftRpm = 7900 },
    Keep = [PickRequest_keep.DrivenSpring, PickRequest_keep.Hole, PickRequest_keep.Helix],
    Count = 2,
}));
Check(Right(pick.Picks).Count > 0 && Right(pick.Work).Proven == true, "nothing was picked");

// The same pick by its id, and once more by its tag.
HeadersInspectionHandlerOption headers = new() { InspectResponseHeaders = true };
PickAnswer again = Right(await client.V1.Picks[Right(pick.Id)].GetAsync(request => request.Options.Add(headers)));
Check(again.Id == pick.Id && Right(again.Picks).Count == Right(pick.Picks).Count, "another pick was answered");
string tag = headers.ResponseHeaders["ETag"].Single();
NativeResponseHandler native = new();
await client.V1.Picks[Right(pick.Id)].GetAsync(request =>
{
    request.Headers.Add("If-None-Match", tag);
    request.Options.Add(new ResponseHandlerOption { ResponseHandler = native });
});
using (HttpResponseMessage known = (HttpResponseMessage)Right(native.Value))
    Check((int)known.StatusCode == 304, $"{known.StatusCode} for a tag that is known");

// A refusal, by its type.
try
{
    await client.V1.Predictions.PostAsync(new PredictionRequest { Machine = "valley-twoseater" });
    Check(false, "a machine that is not there was answered");
}
catch (Problem problem)
{
    Check(problem.Code == Problem_code.UnknownMachine && problem.Status == 400, $"the problem is {problem.Code}");
    Check(Right(problem.Errors)[0].Pointer == "/machine", "the fault has no place");
}

// A run of many: the generator knows of lines only as a stream.
const string Line = """{ "id": 17, "request": { "machine": "valley-two-seater", "ratioPoints": 3 }, "axes": [{ "member": "/altitude", "values": ["0 m", "1500 m"] }] }""";
using MemoryStream sent = new(Encoding.UTF8.GetBytes(Line));
using Stream received = Right(await client.V1.BulkPredictions.PostAsync(sent));
using StreamReader lines = new(received);
string[] answers = [.. (await lines.ReadToEndAsync()).TrimEnd('\n').Split('\n')];
using JsonDocument end = JsonDocument.Parse(answers[^1]);
Check(answers.Length == 3 && end.RootElement.GetProperty("failed").GetInt32() == 0, "the run failed");

Console.WriteLine("clients: C# ok");

static T Right<T>(T? value) => value ?? throw new InvalidOperationException($"There is no {typeof(T).Name}.");

static void Check(bool holds, string otherwise)
{
    if (!holds)
        throw new InvalidOperationException($"Not as it should be: {otherwise}.");
}
