using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.Tests.Catalog;

namespace PartPicker.Tests.Mechanics;

/// <summary>
/// How far the sample snow machine slows down under a share of its torque, at nine ratios: speed over that at full torque.
/// </summary>
/// <remarks>One torque at every speed, that of the engine's greatest power, so that the ratio alone does not move the speed.</remarks>
internal sealed class PartLoadLine
{
    public const int Ratios = 9;

    /// <summary>[40 CFR 1051.505] Table 1, with the band of [SYS-1] around each speed.</summary>
    public static readonly IReadOnlyList<(double Torque, double Speed, double Least, double Greatest)> Cycle =
    [
        (0.51, 0.85, 0.76, 0.93),
        (0.33, 0.75, 0.65, 0.85),
        (0.19, 0.65, 0.54, 0.76),
    ];

    private readonly MachineModel machine;
    private readonly SetUp set;
    private readonly Drivetrain flat;
    private readonly double[] full;

    public PartLoadLine()
    {
        MachineProfile profile = SampleFolder.Snapshot.FindMachine("plateau-snow-machine")!;
        machine = MachineModel.Create(profile, [])!;
        set = new SetUpReader(SampleFolder.Snapshot, profile, []).Find(profile.Machine.Fitted!, "fitted")!;
        double test = machine.Drivetrain.Engine.At(machine.Drivetrain.Engine.PeakPower().Rpm);
        flat = machine.Drivetrain with
        {
            Engine = new EngineTorque([(500, test), (machine.Drivetrain.RevLimitRpm, test)], machine.Drivetrain.RevLimitRpm),
        };
        full = Speeds(1);
    }

    /// <summary>Speed shares by ratio, low gear first.</summary>
    public double[] Shares(double torqueShare) => [.. Speeds(torqueShare).Zip(full, (n, n1) => n / n1)];

    private double[] Speeds(double torqueShare)
    {
        var model = new ShiftModel(flat, machine.Positions(Ratios), torqueShare, AnchorFactors.None);
        DriveSide drive = Predictor.Drive(model, machine, set.Spring, set.Flyweight);
        DrivenSide driven = Predictor.Driven(model, machine, set.Driven);
        return
        [
            .. Enumerable.Range(0, Ratios).Select(j => model.BalanceRpm(drive, driven, j, ShiftDirection.Upshift)!.Value),
        ];
    }
}
