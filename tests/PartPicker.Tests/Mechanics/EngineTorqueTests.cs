using CsCheck;
using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>Full-throttle torque at its edges, and the power that it makes.</summary>
public sealed class EngineTorqueTests
{
    private static readonly Gen<(double Rpm, double Nm)[]> Tables =
        from start in Gen.Double[500, 2000]
        from gaps in Gen.Double[300, 1500].Array[2, 9]
        from torques in Gen.Double[1, 100].Array[gaps.Length]
        select gaps.Select((_, i) => (start + gaps.Take(i).Sum(), torques[i])).ToArray();

    [Fact]
    public void Peak_power_is_that_of_dense_sampling() =>
        Gen.Select(Tables, Gen.Double[0.1, 1]).Sample((table, share) =>
        {
            double limit = share * table[^1].Rpm;
            var engine = new EngineTorque(table, limit);
            (double rpm, double power) = engine.PeakPower();

            // Power may have a corner where the table begins: the points are sampled too.
            double sampled = Enumerable.Range(0, 20_001).Select(i => limit * i / 20_000)
                .Concat(table.Select(p => p.Rpm).Where(n => n <= limit))
                .Max(n => Power(engine, n));
            Assert.InRange(power, sampled * (1 - 1e-12), sampled * (1 + 1e-4) + 1e-9);
            Assert.InRange(rpm, 0, limit);
            Relative.Equal(power, Power(engine, rpm), 1e-12);
        });

    // Torque that falls in a line, Q = 120 − n/100: n Q is greatest at 6000 rpm, however flat the top.
    [Fact]
    public void Peak_power_of_a_line_is_exact()
    {
        var engine = new EngineTorque([(2000, 100), (9000, 30)], revLimitRpm: 9000);

        (double rpm, double power) = engine.PeakPower();

        Assert.Equal(6000, rpm, 1e-8);
        Relative.Equal(60 * 200 * Math.PI, power, 1e-14);
    }

    [Fact]
    public void Torque_is_held_below_the_table_and_refused_above_it()
    {
        var engine = new EngineTorque([(2000, 40), (5000, 70), (9000, 60)], revLimitRpm: 9000);

        Assert.Equal(40, engine.At(0));
        Assert.Equal(40, engine.At(1999));
        Assert.Equal(60, engine.At(9000), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => engine.At(9001));
        Assert.Throws<ArgumentOutOfRangeException>(() => engine.At(double.NaN));
    }

    [Theory]
    [InlineData(9000.1)]
    [InlineData(0)]
    [InlineData(double.NaN)]
    public void A_rev_limit_outside_the_table_is_refused(double limit) =>
        Assert.Throws<ArgumentException>(() => new EngineTorque([(2000, 40), (9000, 60)], limit));

    [Fact]
    public void Torque_below_zero_is_refused() =>
        Assert.Throws<ArgumentException>(() => new EngineTorque([(2000, 40), (9000, -1)], 8000));

    // Any two peaks with p of 1 or more: by dense sampling both are where and what the brochure says.
    [Fact]
    public void Two_peaks_are_met_exactly() =>
        Gen.Select(Gen.Double[2000, 6000], Gen.Double[1.05, 2], Gen.Double[20, 150], Gen.Double[0.4, 0.99]).Sample(
            (torqueRpm, powerOverTorqueRpm, torque, share) =>
            {
                double powerRpm = torqueRpm * powerOverTorqueRpm;
                double atPower = torque * share;
                double watts = atPower * powerRpm * Math.PI / 30;
                double p = atPower / powerRpm * (powerRpm - torqueRpm) / (torque - atPower);
                if (Math.Abs(p - 1) < 1e-6)
                    return; // The next test is of that edge.
                if (p < 1)
                {
                    Assert.Contains("drop at once", Assert.Throws<ArgumentException>(
                        () => new TwoPeaks(torqueRpm, torque, powerRpm, watts)).Message);
                    return;
                }

                var engine = new EngineTorque(new TwoPeaks(torqueRpm, torque, powerRpm, watts), 1.2 * powerRpm);
                (double rpm, double power) = engine.PeakPower();
                Relative.Equal(powerRpm, rpm, 1e-6);
                Relative.Equal(watts, power, 1e-12);
                Relative.Equal(torque, engine.At(torqueRpm), 1e-12);
                for (int i = 0; i <= 2000; i++)
                {
                    double n = 1.2 * powerRpm * i / 2000;
                    Assert.True(engine.At(n) <= torque * (1 + 1e-12) && Power(engine, n) <= watts * (1 + 1e-12));
                }
            });

    // By hand: 80 N·m at 6000 rpm, 70 N·m at 8000 rpm: p = 70/8000 · 2000/10 = 1.75.
    [Theory]
    [InlineData(0, 40)]
    [InlineData(3000, 70)]
    [InlineData(7000, 77.0269822)] // 80 − 10 · 0.5^1.75
    [InlineData(8800, 63)]
    [InlineData(16_000, 0)]
    public void Torque_between_two_peaks_is_that_by_hand(double rpm, double torque)
    {
        var peaks = new TwoPeaks(6000, 80, 8000, 70 * 8000 * Math.PI / 30);
        Assert.Equal(torque, peaks.At(rpm), 1e-6);
        if (rpm is > 0 and < 16_000)
            Assert.Equal((peaks.At(rpm + 0.01) - peaks.At(rpm - 0.01)) / 0.02, peaks.Slope(rpm), 1e-6);
    }

    [Theory]
    [InlineData(8000, 80, 6000, 50, "lower rpm")]
    [InlineData(6000, 80, 6000, 50, "lower rpm")]
    [InlineData(0, 80, 8000, 70, "lower rpm")]
    [InlineData(6000, 80, 8000, 81, "must be above that")]
    [InlineData(6000, 80, 8000, 80, "must be above that")]
    [InlineData(6000, 80, 8000, 0, "must be above that")]
    [InlineData(6000, 80, 8000, 50, "drop at once")]
    public void Peaks_of_no_one_engine_are_refused(
        double torqueRpm, double torque, double powerRpm, double torqueAtPower, string reason) =>
        Assert.Contains(reason, Assert.Throws<ArgumentException>(
            () => new TwoPeaks(torqueRpm, torque, powerRpm, torqueAtPower * Rotation.ToRadiansPerSecond(powerRpm))).Message);

    // p = 1, the least that is taken, is a straight line between the peaks; round numbers may miss 1 by a rounding.
    [Theory]
    [InlineData(4096, 96, 8192, 64)]
    [InlineData(3000, 90, 6000, 60)]
    [InlineData(5873, 129, 11746, 86)]
    public void Torque_may_fall_in_a_line_between_the_peaks(double torqueRpm, double torque, double powerRpm, double atPower) =>
        Assert.Equal(
            (torque + atPower) / 2,
            new TwoPeaks(torqueRpm, torque, powerRpm, atPower * Rotation.ToRadiansPerSecond(powerRpm)).At((torqueRpm + powerRpm) / 2),
            1e-9);

    [Fact]
    public void A_rev_limit_beyond_the_range_of_two_peaks_is_refused()
    {
        var peaks = new TwoPeaks(6000, 80, 8000, 70 * 8000 * Math.PI / 30);
        Assert.Equal(16_000, new EngineTorque(peaks, 16_000).RevLimitRpm);
        Assert.Throws<ArgumentException>(() => new EngineTorque(peaks, 16_001));
        Assert.Throws<ArgumentException>(() => new EngineTorque(peaks, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => peaks.At(16_001));
        Assert.Throws<ArgumentOutOfRangeException>(() => peaks.At(-1));
    }

    private static double Power(EngineTorque engine, double rpm) => engine.At(rpm) * rpm * Math.PI / 30;
}
