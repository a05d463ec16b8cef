using System.Globalization;
using System.Xml.Linq;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>The recipes for scripts do what docs/recipes.md says.</summary>
public sealed class RecipeTests : IDisposable
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private readonly Recipe recipe = new("recipes.md");

    public void Dispose() => recipe.Dispose();

    [Fact]
    public async Task The_recipe_for_the_counter_finds_asks_prints_and_asks_again()
    {
        string[] lines = (await recipe.RunAsync("sh", "counter.sh", "bash", "counter.sh")).TrimEnd().Split('\n');

        Assert.Contains("\"id\": \"valley-two-seater\"", lines[0]);
        int head = Array.IndexOf(lines, "rank  engages at  full shift at  to hand over");
        Assert.True(head > 0);
        for (int rank = 1; rank <= 5; rank++)
            Assert.Matches($"^ +{rank} +2[0-9]{{3}} +[78][0-9]{{3}}  [0-9] x [a-z]", lines[head + rank]);
        Assert.Contains(lines, line => line.StartsWith("WARNING: Springs store energy", StringComparison.Ordinal));
        Assert.Equal(["304", "Pick-Status: current"], lines[^2..].Select(line => line.TrimEnd('\r')));
        Assert.Equal(recipe.Read("answer.json"), recipe.Read("today.json"));
    }

    [Fact]
    public async Task The_recipe_in_Python_writes_a_table_and_draws_its_curves()
    {
        await recipe.RunAsync("python", "sweep.py", "python3", "sweep.py");

        string[] rows = await File.ReadAllLinesAsync(recipe.PathOf("sweep.csv"));
        Assert.Equal("heel,tip,altitude m,engagement rpm,rpm at full shift,problem", rows[0]);
        Assert.Equal(2 * 4 * 3, rows.Length - 1);
        Assert.StartsWith("0 g,8 g,0,", rows[1]);
        Assert.StartsWith("4 g,12 g,3000,", rows[^1]);
        string[][] cells = [.. rows.Skip(1).Select(row => row.Split(','))];
        Assert.All(cells, row => Assert.InRange(Number(row[3]), 1000, 5000));
        Assert.All(cells, row => Assert.Empty(row[5]));

        // More mass at the tip takes hold at a lower rpm, and shifts at a lower one.
        Assert.True(Number(cells[0][3]) > Number(cells[2][3]));
        double[][] heights = Curves("sweep.svg", points: 9);
        Assert.Equal(3, heights.Length);
        for (int i = 0; i < 9; i++)
            Assert.True(heights[0][i] < heights[1][i] && heights[1][i] < heights[2][i], "Up is less in a picture.");
    }

    [Fact]
    public async Task The_recipe_in_CSharp_writes_the_best_set_for_each_engagement_and_draws_its_curve()
    {
        await recipe.RunAsync("csharp", "sweep.cs", "dotnet", "run", "sweep.cs");

        string[][] rows = [.. (await File.ReadAllLinesAsync(recipe.PathOf("sets.csv"))).Select(row => row.Split(','))];
        Assert.Equal(["wanted rpm", "engagement rpm", "drive spring", "flyweight", "miss", "problem"], rows[0]);
        Assert.Equal(["2000", "2100", "2200", "2300", "2400"], rows.Skip(1).Select(row => row[0]));
        foreach (string[] row in rows.Skip(1))
        {
            Assert.Equal(Number(row[0]), Number(row[1]), 100.0);
            Assert.Equal(("ds-", "fw-", ""), (row[2][..3], row[3][..3], row[5]));
            Assert.InRange(Number(row[4]), 0, 1);
        }

        Assert.Equal(5, Curves("sets.svg", points: 9).Length);
    }

    /// <summary>The heights of every curve of a picture, whose places all lie inside.</summary>
    private double[][] Curves(string file, int points)
    {
        XElement picture = XDocument.Load(recipe.PathOf(file)).Root!;
        Assert.NotEmpty((string)picture.Attribute("aria-label")!);
        return
        [
            .. picture.Elements(Svg + "polyline").Select(line =>
            {
                double[][] places = [.. ((string)line.Attribute("points")!).Split(' ').Select(place => place.Split(',').Select(Number).ToArray())];
                Assert.Equal(points, places.Length);
                Assert.All(places, place => Assert.True(place[0] is >= 60 and <= 520 && place[1] is >= 50 and <= 350));
                Assert.Equal(places.Select(place => place[0]).Order(), places.Select(place => place[0]));
                return places.Select(place => place[1]).ToArray();
            }),
        ];
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
