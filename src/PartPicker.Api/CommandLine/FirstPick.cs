using System.Diagnostics;
using System.Net.Http.Headers;
using System.Net.Mime;
using System.Text.Json;
using PartPicker.Api.Docs;
using PartPicker.Api.Wire;
using PartPicker.Parts;

namespace PartPicker.Api.CommandLine;

/// <summary>Asks the service its sample question over HTTP, as anyone would, and prints the answer.</summary>
internal static class FirstPick
{
    /// <summary>Where a question may lie in a catalog folder.</summary>
    public static readonly string QuestionFile = Path.Combine("requests", "first-pick.json");

    /// <summary>True unless the question was refused: a catalog may well come without one.</summary>
    /// <param name="service">Where it listens.</param>
    /// <param name="catalog">The catalog in use.</param>
    /// <param name="folder">A catalog folder, which may hold a question.</param>
    /// <param name="isOfFolder">True where the catalog in use is known to be that of the folder.</param>
    /// <param name="to">Where the answer is printed.</param>
    public static async Task<bool> AskAsync(
        Uri service, CatalogSnapshot catalog, string folder, bool isOfFolder, TextWriter to)
    {
        string file = Path.Combine(folder, QuestionFile);
        byte[]? kept;
        try
        {
            kept = File.Exists(file) ? await File.ReadAllBytesAsync(file) : null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            to.WriteLine($"The sample question in {file} cannot be read: let this account read it, or move it away.");
            return false;
        }

        if (kept is not null && (isOfFolder || IsAbout(catalog, kept)))
            return await AskAsync(service, catalog, kept, $"The sample question in {file}", to);
        if (SampleQuestion.Of(catalog) is not { } question)
        {
            to.WriteLine(
                $"No sample question is asked: there is none for this catalog in {file}, and no machine of the catalog has a "
                + "measured run (baselines), whose rpm could be asked for.");
            return true;
        }

        to.WriteLine(
            $"There is no sample question for this catalog in {file}: the rpm of a measured run are asked for in the mountains instead.");
        return await AskAsync(
            service, catalog, WireJson.Bytes(question), $"The question for the measured run of {question.Machine}", to);
    }

    // A store that was filled from another folder is not asked about the machines of this one.
    private static bool IsAbout(CatalogSnapshot catalog, byte[] question)
    {
        try
        {
            using JsonDocument json = JsonDocument.Parse(question);
            return json.RootElement.ValueKind == JsonValueKind.Object
                && json.RootElement.TryGetProperty("machine", out JsonElement machine)
                && machine.ValueKind == JsonValueKind.String
                && catalog.FindMachine(machine.GetString()!) is not null;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static async Task<bool> AskAsync(Uri service, CatalogSnapshot catalog, byte[] json, string what, TextWriter to)
    {
        // The service is on this machine: a proxy has no business in between.
        using var handler = new SocketsHttpHandler { UseProxy = false };
        using var client = new HttpClient(handler) { BaseAddress = service };
        using var question = new ByteArrayContent(json);
        question.Headers.ContentType = new MediaTypeHeaderValue(MediaTypeNames.Application.Json);

        long started = Stopwatch.GetTimestamp();
        using HttpResponseMessage response =
            await client.PostAsync(new Uri("/v1/picks", UriKind.Relative), question);
        byte[] body = await response.Content.ReadAsByteArrayAsync();
        TimeSpan took = Stopwatch.GetElapsedTime(started);

        if (!response.IsSuccessStatusCode)
        {
            PrintProblem(what, JsonSerializer.Deserialize<ProblemWire>(body, WireJson.Options)!, to);
            return false;
        }

        PickAnswerWire answer = JsonSerializer.Deserialize<PickAnswerWire>(body, WireJson.Options)!;
        PickTable.Print(answer, catalog, to);
        to.WriteLine(
            $"searched {answer.Work.Combinations} combinations{(answer.Work.Proven ? "" : ", not all of them")}, "
            + $"{took.TotalMilliseconds:F0} ms");
        return true;
    }

    private static void PrintProblem(string what, ProblemWire problem, TextWriter to)
    {
        to.WriteLine($"{what} was refused: {problem.Title}. {problem.Detail}");
        foreach (ProblemErrorWire error in problem.Errors)
        {
            to.WriteLine($"  {error.Pointer}: {error.Code}, sent {error.Sent ?? "nothing"}; "
                + $"expected {error.Expected}");
        }
    }
}
