using System.Globalization;
using PartPicker.Mechanics;
using PartPicker.Tests.Catalog;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>The pages of docs/model: their worked examples come out of the model, and they hold what explanations cite.</summary>
public sealed class ModelPageTests
{
    // The pages print six digits.
    private const double PrintedShare = 1e-5;

    private static readonly string Docs = Path.Combine(Path.GetDirectoryName(SampleFolder.Path)!, "docs");

    public static TheoryData<string, string, string, double> Rows
    {
        get
        {
            var rows = new TheoryData<string, string, string, double>();
            foreach (string page in Directory.GetFiles(Path.Combine(Docs, "model"), "*.md").Order(StringComparer.Ordinal))
            {
                foreach (string line in File.ReadLines(page).SkipWhile(l => l != "| relation | given | result |").Skip(2))
                {
                    string[] cells = [.. line.Trim('|').Split('|').Select(c => c.Trim())];
                    if (cells.Length == 3)
                        rows.Add(Path.GetFileName(page), cells[0], cells[1], Number(cells[2]));
                }
            }

            return rows;
        }
    }

    public static TheoryData<string> Names => [.. Relations.All.Select(r => r.Name)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_worked_example_comes_out_as_its_page_prints_it(string page, string relation, string given, double result)
    {
        Dictionary<string, double> v = given.Split(", ").Select(g => g.Split(" = ")).ToDictionary(g => g[0], g => Number(g[1]));
        double computed = relation switch
        {
            "spring-rate" => HelicalSpring.Rate(
                Pressure.FromPascals(v["G"]), Length.FromMeters(v["d"]), Length.FromMeters(v["D"]), v["Na"]).NewtonsPerMeter,
            "twist-rate" => TorsionSpring.TwistRate(
                Pressure.FromPascals(v["E"]), Length.FromMeters(v["d"]), Length.FromMeters(v["D"]), v["Na"])
                .NewtonMetersPerRadian,
            "thrust-per-speed-squared" => Flyweights().ThrustPerSpeedSquared(0),
            "flyweight-thrust" => v["af"] * Flyweights().Thrust(0, Rotation.ToRadiansPerSecond(v["n"])),
            "engagement" => Engagement.Of(
                LinearCurve.Line(0, v["F1"], 0, 0, 1), 0.5, Flyweights(), Contact, v["f"], v["af"]).Rpm,
            "cam-force" => HelixCam.Thrust(
                Torque.FromNewtonMeters(v["T"]), Length.FromMeters(v["rc"]), Angle.FromRadians(v["alpha"]),
                Angle.FromRadians(-v["phi"])).Newtons,
            "twist-stiffening" => HelicalSpring.TwistStiffening(v["theta"] / (2 * Math.PI), v["Na"]),
            "saturation-pressure" => Atmosphere.SaturationPressure(Temperature.FromKelvins(v["T"])).Pascals,
            "dry-pressure" => Atmosphere.DryPressure(
                Pressure.FromPascals(v["p"]), Temperature.FromKelvins(v["T"]), v["h"]).Pascals,
            "moist-torque-factor" => Atmosphere.TorqueFactor(
                AirCorrection.SaeJ1349, Length.FromMeters(v["H"]), Temperature.FromKelvins(v["T"]), v["h"]),
            "groove-friction" => BeltThrust.GrooveFriction(v["mu"], v["beta"]),
            "belt-tension" or "slipping-tension" => Load(DriveThrustForm.TwoArc).TightNet,
            "active-arc" => Load(DriveThrustForm.TwoArc).DriveActiveArc,
            "drive-thrust" => Load(DriveThrustForm.TwoArc).DriveThrust,
            "locked-thrust" => Load(DriveThrustForm.Locked).DriveThrust,
            _ => throw new ArgumentOutOfRangeException(nameof(relation), relation, $"{page} works an unknown relation."),
        };
        Assert.Equal(result, computed, PrintedShare * Math.Abs(result));
        if (relation is "belt-tension" or "slipping-tension")
            Assert.Equal(relation == "slipping-tension", Load(DriveThrustForm.TwoArc).DrivenSlips);

        FlyweightSet Flyweights() => new(
            (int)v["z"], [(v["m"], new SmoothCurve([(0, v["r"]), (Contact, v["r"] + v["slope"] * Contact)]))]);

        BeltLoad Load(DriveThrustForm form) =>
            new BeltThrust(v["beta"], v["mu"], v["theta1"], v["theta2"], form).Load(v["Fs"], v["D"]);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_an_explanation_cites_stands_on_its_page_and_among_the_sources(string name)
    {
        Relation relation = Relations.All.Single(r => r.Name == name);
        string page = File.ReadAllText(Path.Combine(Docs, "model", relation.Page));
        Assert.Contains($"\n## `{name}`\n", page, StringComparison.Ordinal);
        if (relation.Source is { } key)
            Assert.Single(File.ReadLines(Path.Combine(Docs, "sources.md")), l => l.StartsWith($"| [{key}] |", StringComparison.Ordinal));
    }

    [Fact]
    public void Each_key_of_the_sources_stands_there_once()
    {
        string[] keys =
        [
            .. File.ReadLines(Path.Combine(Docs, "sources.md"))
                .Where(l => l.StartsWith("| [", StringComparison.Ordinal)).Select(l => l.Split('|')[1].Trim()),
        ];
        Assert.NotEmpty(keys);
        Assert.Equal(keys.Distinct(), keys);
    }

    private const double Contact = 0.01;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
