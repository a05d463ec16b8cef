using System.Diagnostics;
using System.Net.Http.Headers;
using System.Net.Mime;
using System.Text.Json;
using PartPicker.Api.Wire;

namespace PartPicker.Api.CommandLine;

/// <summary>Asks the service its sample question over HTTP, as anyone would, and prints the answer.</summary>
internal static class FirstPick
{
    /// <summary>Where the question lies in a catalog folder.</summary>
    public static readonly string QuestionFile = Path.Combine("requests", "first-pick.json");

    /// <summary>True unless the question was refused: a catalog may well come without one.</summary>
    public static async Task<bool> AskAsync(Uri service, string catalogFolder, TextWriter to)
    {
        string file = Path.Combine(catalogFolder, QuestionFile);
        if (!File.Exists(file))
        {
            to.WriteLine($"No sample question is asked: there is no {file}.");
            return true;
        }

        // The service is on this machine: a proxy has no business in between.
        using var handler = new SocketsHttpHandler { UseProxy = false };
        using var client = new HttpClient(handler) { BaseAddress = service };
        using var question = new ByteArrayContent(await File.ReadAllBytesAsync(file));
        question.Headers.ContentType = new MediaTypeHeaderValue(MediaTypeNames.Application.Json);

        long started = Stopwatch.GetTimestamp();
        using HttpResponseMessage response =
            await client.PostAsync(new Uri("/v1/picks", UriKind.Relative), question);
        byte[] body = await response.Content.ReadAsByteArrayAsync();
        TimeSpan took = Stopwatch.GetElapsedTime(started);

        if (!response.IsSuccessStatusCode)
        {
            PrintProblem(file, JsonSerializer.Deserialize<ProblemWire>(body, WireJson.Options)!, to);
            return false;
        }

        PickAnswerWire answer = JsonSerializer.Deserialize<PickAnswerWire>(body, WireJson.Options)!;
        PickTable.Print(answer, to);
        to.WriteLine(
            $"searched {answer.Work.Combinations} combinations{(answer.Work.Proven ? "" : ", not all of them")}, "
            + $"{took.TotalMilliseconds:F0} ms");
        return true;
    }

    private static void PrintProblem(string file, ProblemWire problem, TextWriter to)
    {
        to.WriteLine($"The sample question in {file} was refused: {problem.Title}. {problem.Detail}");
        foreach (ProblemErrorWire error in problem.Errors)
        {
            to.WriteLine($"  {error.Pointer}: {error.Code}, sent {error.Sent ?? "nothing"}; "
                + $"expected {error.Expected}");
        }
    }
}
