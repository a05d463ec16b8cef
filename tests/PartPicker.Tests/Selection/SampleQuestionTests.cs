using System.Text.Json;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.Tests.Catalog;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>The ready-made questions and the machines of the sample catalog.</summary>
public sealed class SampleQuestionTests
{
    /// <summary>A ready-made question shall be answered while one waits for it.</summary>
    private const long MostSets = 100_000;

    // How far a model that fits its machine may be from what was measured on it.
    private const double LeastFactor = 0.8;
    private const double GreatestFactor = 1.25;

    public static TheoryData<string> Questions { get; } =
    [
        .. Directory.GetFiles(Path.Combine(SampleFolder.Path, "requests"), "*-pick.json")
            .Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal),
    ];

    public static TheoryData<string, int> Baselines
    {
        get
        {
            var data = new TheoryData<string, int>();
            foreach (MachineProfile machine in SampleFolder.Snapshot.Machines)
            {
                for (int i = 0; i < machine.Machine.Baselines.Count; i++)
                    data.Add(machine.Machine.Id, i);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public void A_ready_made_question_covers_few_enough_sets_to_try_them_one_by_one(string file)
    {
        PickRequest request = Read(file);
        var problems = new List<RequestProblem>();
        MachineModel machine = MachineModel.Create(request.Machine, problems)!;
        var reader = new SetUpReader(SampleFolder.Snapshot, request.Machine, problems);
        SetUp? fitted = reader.Find(request.Fitted!, "fitted");
        Assert.Empty(problems);

        var report = new FitReport(request.DemandChecked);
        CandidatePools? pools = new PoolBuilder(SampleFolder.Snapshot, machine, fitted!, request, report)
            .Build(problems, CancellationToken.None);

        Assert.Empty(problems);
        Assert.InRange(pools!.Combinations, 0, MostSets);
        Assert.Equal(file == "nothing-fits-pick.json", pools.Empty);
    }

    [Theory]
    [MemberData(nameof(Baselines))]
    public void The_model_of_a_sample_machine_is_near_what_was_measured_on_it(string machine, int baseline)
    {
        MachineProfile profile = SampleFolder.Snapshot.FindMachine(machine)!;

        Outcome<PredictionAnswer> predicted = SetPrediction.Predict(
            SampleFolder.Snapshot,
            new PredictionRequest { Machine = profile, Baseline = profile.Machine.Baselines[baseline] });

        Assert.Empty(predicted.Problems);
        Anchoring anchoring = predicted.Answer!.Prediction.Anchoring!;
        Assert.InRange(anchoring.FlyweightFactor, LeastFactor, GreatestFactor);
        Assert.InRange(anchoring.ThrustFactor, LeastFactor, GreatestFactor);
        Assert.Empty(anchoring.Warnings);
    }

    [Fact]
    public void The_fitted_set_of_every_sample_machine_fits_it()
    {
        foreach (MachineProfile profile in SampleFolder.Snapshot.Machines)
        {
            var problems = new List<RequestProblem>();
            MachineModel machine = MachineModel.Create(profile, problems)!;
            var reader = new SetUpReader(SampleFolder.Snapshot, profile, problems);
            SetUp fitted = reader.Find(profile.Machine.Fitted!, "fitted")!;

            RequestCheck.CheckKept(Enum.GetValues<Slot>().ToHashSet(), fitted, machine, problems);

            Assert.Empty(problems);
        }
    }

    /// <summary>As much of a question as decides which parts may be tried.</summary>
    private static PickRequest Read(string file)
    {
        using JsonDocument document = JsonDocument.Parse(
            File.ReadAllText(Path.Combine(SampleFolder.Path, "requests", file)));
        JsonElement body = document.RootElement;
        MachineProfile machine = SampleFolder.Snapshot.FindMachine(body.GetProperty("machine").GetString()!)!;
        PartSet delivered = machine.Machine.Fitted!;
        JsonElement set = body.TryGetProperty("fitted", out JsonElement fitted) ? fitted : default;
        return new PickRequest
        {
            Machine = machine,
            Target = ShiftTarget.Flat(null, 0),
            Fitted = delivered with
            {
                DriveSpring = Id("driveSpring") ?? delivered.DriveSpring,
                Flyweight = Id("flyweight") ?? delivered.Flyweight,
                // Masses of a kept arm are one choice, whichever they are.
                StationMasses = Id("flyweight") is null ? delivered.StationMasses : new Dictionary<StationName, double>(),
                DrivenSpring = Id("drivenSpring") ?? delivered.DrivenSpring,
                Hole = Id("hole") ?? delivered.Hole,
                Helix = Id("helix") ?? delivered.Helix,
            },
            Keep = Words(body, "keep").Select(s => Enum.Parse<Slot>(s, ignoreCase: true)).ToHashSet(),
            Exclude = Words(body, "exclude").ToHashSet(),
            InStockOnly = Flag(body, "inStockOnly"),
            DemandChecked = Flag(body, "demandChecked"),
            Outlet = body.TryGetProperty("outlet", out JsonElement outlet)
                ? SampleFolder.Snapshot.FindOutlet(outlet.GetString()!)
                : null,
        };

        string? Id(string member) =>
            set.ValueKind == JsonValueKind.Object && set.TryGetProperty(member, out JsonElement id)
                ? id.GetString()
                : null;
    }

    private static IEnumerable<string> Words(JsonElement body, string member) =>
        body.TryGetProperty(member, out JsonElement list) ? list.EnumerateArray().Select(e => e.GetString()!) : [];

    private static bool Flag(JsonElement body, string member) =>
        body.TryGetProperty(member, out JsonElement flag) && flag.GetBoolean();
}
