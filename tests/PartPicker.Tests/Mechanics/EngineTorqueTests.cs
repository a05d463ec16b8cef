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

    private static double Power(EngineTorque engine, double rpm) => engine.At(rpm) * rpm * Math.PI / 30;
}
