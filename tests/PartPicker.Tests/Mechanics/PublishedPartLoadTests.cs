using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.Tests.Catalog;
using Xunit;
using Xunit.Abstractions;

namespace PartPicker.Tests.Mechanics;

/// <summary>
/// SYS-1: the part-load line of a whole machine. [40 CFR 1051.505] Table 1 tests snow machine engines at 100, 85, 75 and 65 %
/// of test speed under 100, 51, 33 and 19 % of test torque; that cycle was taken from instrumented machines ([SAE 982017],
/// abstract). A belt drive tuned to hold one rpm at full throttle comes down in speed as torque does, and by how much is
/// told by its springs, weights and cam.
/// </summary>
/// <remarks>
/// The bands are derived, not published: the span (5 to 95 %) of 4000 plausible drives with the two-arc thrust. A band to fall
/// into, not a validation.
/// </remarks>
public sealed class PublishedPartLoadTests(ITestOutputHelper output)
{
    [Trait("Outside", "SYS-1")]
    [Theory]
    [InlineData(0.51, 0.76, 0.93, 0.85)]
    [InlineData(0.33, 0.65, 0.85, 0.75)]
    [InlineData(0.19, 0.54, 0.76, 0.65)]
    public void A_snow_machine_at_part_load_runs_in_the_band_around_the_published_line(
        double torqueShare, double least, double greatest, double published)
    {
        MachineProfile profile = SampleFolder.Snapshot.FindMachine("plateau-snow-machine")!;
        MachineModel machine = MachineModel.Create(profile, [])!;
        SetUp set = new SetUpReader(SampleFolder.Snapshot, profile, []).Find(profile.Machine.Fitted!, "fitted")!;
        Assert.InRange(published, least, greatest);

        // One torque at every speed, that of the engine's greatest power, so that the ratio alone does not move the speed.
        double test = machine.Drivetrain.Engine.At(machine.Drivetrain.Engine.PeakPower().Rpm);
        Drivetrain flat = machine.Drivetrain with
        {
            Engine = new EngineTorque([(500, test), (machine.Drivetrain.RevLimitRpm, test)], machine.Drivetrain.RevLimitRpm),
        };
        double[] full = Speeds(1);
        double[] part = Speeds(torqueShare);
        double[] shares = [.. part.Zip(full, (n, n1) => n / n1)];
        output.WriteLine(string.Join(" ", shares.Select(s => s.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture))));
        Assert.InRange(shares.Average(), least, greatest);

        double[] Speeds(double share)
        {
            var model = new ShiftModel(flat, machine.Positions(9), share, AnchorFactors.None);
            DriveSide drive = Predictor.Drive(model, machine, set.Spring, set.Flyweight);
            DrivenSide driven = Predictor.Driven(model, machine, set.Driven);
            return [.. Enumerable.Range(0, 9).Select(j => model.BalanceRpm(drive, driven, j, ShiftDirection.Upshift)!.Value)];
        }
    }
}
