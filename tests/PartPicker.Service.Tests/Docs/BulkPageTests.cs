using System.Globalization;
using PartPicker.Api.Wire;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>The recipe of docs/bulk.md does what it says, and its limits are those of the service.</summary>
public sealed class BulkPageTests : IDisposable
{
    private readonly Recipe recipe = new("bulk.md");

    public void Dispose() => recipe.Dispose();

    [Fact]
    public async Task The_recipe_for_curl_answers_every_point()
    {
        string output = await recipe.RunAsync("sh", "recipe.sh", "bash", "recipe.sh");

        Assert.Equal("""{"done":true,"count":8,"failed":0,"lastLine":2,"problem":null}""", output.Trim());
        Assert.Equal(9, (await File.ReadAllLinesAsync(recipe.PathOf("answers.ndjson"))).Length);
    }

    [Fact]
    public void The_limits_of_the_page_are_those_of_the_service()
    {
        AssertRow("one line", $"{Said(RequestLimits.MaxBodyBytes)} bytes, {RequestLimits.MaxDepth} levels deep");
        AssertRow("`id`", $"{RequestLimits.MaxBulkIdLength} characters");
        AssertRow("axes of a line", $"{RequestLimits.MaxAxes}");
        AssertRow("points of a grid", Said(RequestLimits.MaxGridPoints));
        AssertRow("answers of a run", Said(RequestLimits.MaxBulkAnswers));
        AssertRow("runs at once", $"{RequestLimits.MaxBulkRuns}");
        AssertRow("waiting for a line", $"{RequestLimits.MaxBulkStall.TotalMinutes} minutes");
        AssertRow("waiting for you to read", $"{RequestLimits.MaxBulkStall.TotalMinutes} minutes");
        AssertRow("taken in ahead of its turn", $"{RequestLimits.MaxBulkBytesAhead >> 20} MiB of the body");

        static string Said(int number) => number.ToString("N0", CultureInfo.InvariantCulture);

        void AssertRow(string what, string limit) => Assert.Contains($"| {what} | {limit} |", recipe.Page);
    }
}
