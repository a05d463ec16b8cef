using System.Text.RegularExpressions;
using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.Tests.Catalog;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>A number taken apart: its values are the prediction's own, and each follows from its parts.</summary>
public sealed partial class ExplanationTests
{
    private const int PointCount = 4;

    public static TheoryData<string, bool> Machines
    {
        get
        {
            var rows = new TheoryData<string, bool>();
            foreach (MachineProfile machine in SampleFolder.Snapshot.Machines)
            {
                rows.Add(machine.Machine.Id, true);
                rows.Add(machine.Machine.Id, false);
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Machines))]
    public void The_tree_holds_the_numbers_of_the_prediction(string machine, bool anchored)
    {
        PredictionAnswer answer = Predict(machine, anchored);
        Prediction prediction = answer.Prediction;
        Assert.Equal(anchored, prediction.Anchoring is not null);
        Holds(ExplainedNames.Engagement, prediction.EngagementRpm);
        Holds(ExplainedNames.LockUp, prediction.LockUpRpm);
        Holds(ExplainedNames.ShiftOut, prediction.ShiftOutRpm);
        Holds(ExplainedNames.PeakPower, (double)prediction.PeakPower.Watts);
        Holds(ExplainedNames.ThrustFactor, prediction.Anchoring?.ThrustFactor);
        Holds(ExplainedNames.FlyweightFactor, prediction.EngagementRpm is null ? null : prediction.Anchoring?.FlyweightFactor);
        for (int j = 0; j < PointCount; j++)
        {
            ShiftPoint point = prediction.Curve[j];
            Balance? balance = point.Upshift;
            Holds($"upshiftRpm/{j + 1}", balance?.Rpm);
            Holds($"slipMargin/{j + 1}", balance?.SlipMargin);
            Holds($"powerLost/{j + 1}", (double?)balance?.PowerLost.Watts);
            Holds($"vehicleSpeed/{j + 1}", balance?.VehicleSpeed.MetersPerSecond);
            if (balance is null)
                continue;
            ExplainedValue[] nodes = [.. Nodes(Named(answer, $"upshiftRpm/{j + 1}")!)];
            Is("flyweightThrust", balance.FlyweightThrust.Newtons);
            Is("springForce", balance.SpringForce.Newtons);
            Is("driveThrust", balance.DriveThrust.Newtons);
            Is("drivenClamp", balance.DrivenClamp.Newtons);
            Is("tightTensionNet", balance.TightTensionNet.Newtons);
            Is("slackTensionNet", balance.SlackTensionNet.Newtons);
            Is("engineTorque", balance.EngineTorque.NewtonMeters);
            Is("torqueFactor", prediction.TorqueFactor);
            Is("driveRadius", point.DriveRadius.Meters);
            Is("drivenRadius", point.DrivenRadius.Meters);
            Is("openingTravel", point.OpeningTravel.Meters);
            Is("camTurn", point.CamTurn.Radians);
            Is("helixAngle", point.HelixAngle.Radians);

            void Is(string name, double value) =>
                Assert.Equal(value, nodes.First(n => n.Name == name).Value, 1e-12 * Math.Abs(value));
        }

        // What UnitsNet holds may have lost its last digit.
        void Holds(string name, double? value)
        {
            double? explained = Named(answer, name)?.Value;
            Assert.Equal(value is null, explained is null);
            if (value is { } number)
                Assert.Equal(number, explained!.Value, 1e-12 * Math.Abs(number));
        }
    }

    [Theory]
    [MemberData(nameof(Machines))]
    public void Every_value_follows_from_its_parts(string machine, bool anchored) =>
        CheckAll(Predict(machine, anchored).Explanations);

    [Fact]
    public void Every_relation_has_a_formula_here_and_is_cited_by_some_tree()
    {
        string[] names = [.. Relations.All.Select(r => r.Name)];
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.Equal(names.Order(), TreeFormulas.Names.Order());

        List<ExplainedValue> trees = [];
        foreach (MachineProfile machine in SampleFolder.Snapshot.Machines)
        {
            trees.AddRange(Predict(machine.Machine.Id, anchored: false).Explanations);
            trees.AddRange(Predict(machine.Machine.Id, anchored: true).Explanations);
        }

        foreach (Bench bench in Benches)
            trees.AddRange(Predict(bench).Explanations);
        HashSet<string> cited = [.. trees.SelectMany(Nodes).Select(n => n.Relation?.Name).OfType<string>()];
        Assert.Equal("", string.Join(", ", names.Except(cited)));
    }

    [Fact]
    public void A_set_known_in_other_ways_follows_from_its_parts_too()
    {
        foreach (Bench bench in Benches)
            CheckAll(Predict(bench).Explanations);
    }

    [Fact]
    public void Every_input_is_a_field_of_the_catalog_or_a_word_of_the_request_the_run_or_the_set()
    {
        string[] words =
        [
            "altitude", "temperature", "relativeHumidity", "baseline.engagementRpm", "measuredRatio", "engineSpeed", "engagementTravel", "point",
            "pointCount", "flyweightFactor", "thrustFactor", "anchoring.solvedFriction", "shimThickness", "shims.count", "twistRate",
        ];
        IEnumerable<PredictionAnswer> ofSamples = SampleFolder.Snapshot.Machines.Select(m => Predict(m.Machine.Id, anchored: true));
        foreach (PredictionAnswer answer in ofSamples.Concat(Benches.Select(Predict)))
        {
            foreach (ExplainedValue input in answer.Explanations.SelectMany(Nodes).Where(n => n.Relation is null))
            {
                string name = State().Replace(input.Name, "");
                Assert.True(
                    words.Contains(name) || OfSet().IsMatch(name) || IsField(name),
                    $"{input.Name} is no input that a reader could look up.");
            }
        }

        static bool IsField(string name) =>
            name.Split('.', '/') is [var piece, var field, ..]
            && Enum.TryParse(piece, ignoreCase: true, out ItemKind kind)
            && FieldRegistry.For(kind).Any(f => f.Name == field);
    }

    [Fact]
    public void A_friction_solved_from_the_run_is_an_input()
    {
        var bench = new Bench();
        Prediction bare = bench.Predicted(r => r with { Anchor = false, PointCount = 5 });
        bench = bench with
        {
            Run = set => new Baseline(
                set, bare.EngagementRpm, [.. bare.Curve.Skip(1).Select(p => new RatioRpm(p.Ratio, p.Upshift!.Rpm))], null, default)
            {
                SolveFriction = true,
            },
        };
        PredictionAnswer answer = Predict(bench);
        ExplainedValue[] inputs = [.. answer.Explanations.SelectMany(Nodes).Where(n => n.Name == "anchoring.solvedFriction")];
        Assert.NotEmpty(inputs);
        Assert.All(inputs, i => Assert.Equal(answer.Prediction.Anchoring!.Friction, i.Value));
        CheckAll(answer.Explanations);
    }

    // What the samples have none of: each bench has its own ways of stating parts, belts, engines and air.
    private static IEnumerable<Bench> Benches
    {
        get
        {
            var bench = new Bench();
            yield return bench with
            {
                DrivenClutch = bench.DrivenClutch with { TwistStiffening = YesNo.Yes },
                DriveClutch = bench.DriveClutch with { ThrustLaw = DriveThrustLaw.Locked },
                Engine = bench.Engine with
                {
                    TorqueCurve = [],
                    PeakTorqueRpm = 6600,
                    PeakTorque = Torque.FromNewtonMeters(110),
                    PeakPowerRpm = 8000,
                    PeakPower = Power.FromKilowatts(80),
                },
                DriveSpring = bench.DriveSpring with
                {
                    Rate = null,
                    FirstLength = Bench.Mm(90),
                    FirstLoad = Force.FromNewtons(85),
                    SecondLength = Bench.Mm(50),
                    SecondLoad = Force.FromNewtons(850),
                },
                DrivenSpring = bench.DrivenSpring with { LegOffsetDeg = 4, LoadLength = Bench.Mm(60), Load = Force.FromNewtons(360) },
                Helix = bench.Helix with { AnglePoints = Bench.Curve((0, 0.75), (0.01, 0.72), (0.018, 0.72), (0.03, 0.65)) },
                Run = _ => null,
            };
            yield return bench with
            {
                Belt = bench.Belt with { FrictionByRadius = Bench.Curve((0.03, 0.30), (0.06, 0.36), (0.12, 0.38)) },
                Engine = bench.Engine with { BoostedTo = Length.FromMeters(600) },
                DriveSpring = bench.DriveSpring with
                {
                    // Short of full shift and of rest by less than the tolerance of fit.
                    LoadTable = Bench.Curve((0.04753, 890), (0.055, 750), (0.062, 620), (0.07197, 430)),
                },
                DrivenSpring = bench.DrivenSpring with
                {
                    LoadTable = Bench.Curve((0.020, 730), (0.045, 495), (0.1, 0)),
                    TorqueTable = Bench.Curve((0, 0), (1.5, 13), (4, 37)),
                },
            };
            yield return bench with
            {
                // The belt slips on the driven sheave.
                Belt = bench.Belt with { Friction = 0.12 },
                DrivenSpring = bench.DrivenSpring with
                {
                    Rate = ForcePerLength.FromNewtonsPerMillimeter(0.5),
                    TwistRate = null,
                    FirstTwistDeg = 0,
                    FirstTorque = Torque.Zero,
                    SecondTwistDeg = 100,
                    SecondTorque = Torque.FromNewtonMeters(0.5),
                },
                DrivenClutch = bench.DrivenClutch with { CamTorqueShare = 0.05 },
                Run = _ => null,
            };
            yield return bench with
            {
                // Springs by their wire alone, on shims; a notch in the arm, so that the weights win once they are over it.
                Flyweight = bench.Flyweight with
                {
                    RadiusCurve = Bench.MmCurve((0, 40.5), (2, 40.8), (3.5, 41.2), (10, 50), (28, 70)),
                    HeelCurve = Bench.MmCurve((0, 36), (2, 36.2), (3.5, 36.4), (28, 56.4)),
                    TipCurve = Bench.MmCurve((0, 44), (2, 44.2), (3.5, 44.5), (10, 56), (28, 86)),
                },
                Run = _ => null,
                DriveClutch = bench.DriveClutch with { ShimLimit = 2 },
                DriveSpring = bench.DriveSpring with { Rate = null },
                DrivenSpring = bench.DrivenSpring with { Rate = null, TwistRate = null, OutsideDiameter = Bench.Mm(61.5) },
                Shelf = [new Shim { Id = "shim", Thickness = Bench.Mm(0.5) }],
            };
        }
    }

    private static void CheckAll(IReadOnlyList<ExplainedValue> trees)
    {
        Assert.NotEmpty(trees);
        foreach (ExplainedValue tree in trees)
        {
            var apart = new Dictionary<string, double>();
            foreach (ExplainedValue node in Nodes(tree))
            {
                TreeFormulas.Check(node);
                if (node.Relation is null)
                    continue;
                if (node.Parts.Count > 0)
                {
                    Assert.True(apart.TryAdd(node.Name, node.Value), $"{node.Name} is taken apart twice in {tree.Name}.");
                    continue;
                }

                // It is taken apart before, in this tree, or in one of its own.
                double there = apart.TryGetValue(node.Name, out double before)
                    ? before
                    : trees.Single(t => t.Name == node.Name).Value;
                Assert.Equal(there, node.Value);
            }
        }
    }

    private static PredictionAnswer Predict(string machine, bool anchored) => Predict(SampleFolder.Snapshot, new PredictionRequest
    {
        Machine = SampleFolder.Snapshot.FindMachine(machine)!,
        Anchor = anchored,
        Air = new AirState(900, anchored ? null : 300),
        AirLaw = anchored ? AirLaw.SaeJ1349 : AirLaw.Iso1585,
    });

    private static PredictionAnswer Predict(Bench bench) => Predict(
        bench.Snapshot(), new PredictionRequest
        {
            Machine = bench.Profile(),
            Parts = bench.Fitted with { Shims = bench.Shelf.Count > 0 ? new FittedShims("shim", 2) : null },
            Air = new AirState(900, 300) { RelativeHumidity = 0.7 },
        });

    private static PredictionAnswer Predict(CatalogSnapshot catalog, PredictionRequest request)
    {
        Outcome<PredictionAnswer> outcome = SetPrediction.Predict(
            catalog, request with { PointCount = PointCount, Explain = [.. ExplainedNames.Of(PointCount)] });
        return outcome.Answer ?? throw new InvalidOperationException(string.Join("; ", outcome.Problems));
    }

    private static ExplainedValue? Named(PredictionAnswer answer, string name) =>
        answer.Explanations.SingleOrDefault(e => e.Name == name);

    private static IEnumerable<ExplainedValue> Nodes(ExplainedValue node) => node.Parts.SelectMany(Nodes).Prepend(node);

    [GeneratedRegex("^((run(/[0-9]+)?|lowGear|fullShift|seaLevel|boostedTo|standardDay|atPeakPower)/)+")]
    private static partial Regex State();

    [GeneratedRegex(@"^(flyweight\.(body|pin|heel|middle|tip)\.(mass|curve/[0-9]+\.(travel|radius))|helix\.points/[0-9]+\.(travel|angle)|hole/.+\.twist)$")]
    private static partial Regex OfSet();
}
