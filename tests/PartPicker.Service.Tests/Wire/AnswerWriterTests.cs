using PartPicker.Api.Wire;
using PartPicker.Parts;
using UnitsNet;
using Xunit;
using UnitSystem = PartPicker.Quantities.UnitSystem;

namespace PartPicker.Service.Tests.Wire;

public sealed class AnswerWriterTests
{
    private static readonly AnswerWriter Metric = Writer(UnitSystem.Metric);
    private static readonly AnswerWriter Inch = Writer(UnitSystem.Inch);
    private static readonly AnswerWriter Full = Writer(UnitSystem.Metric, fullPrecision: true);

    [Fact]
    public void Numbers_leave_with_the_digits_that_mean_something()
    {
        Assert.Equal(7900.1, Metric.Rpm(7900.05));
        Assert.Equal(2.3457, Metric.Ratio(2.345678));
        Assert.Equal(1.235, Metric.Share(1.2345));
        Assert.Equal(0.987654, Metric.Factor(0.98765432));
    }

    [Fact]
    public void Numbers_leave_whole_where_full_precision_is_asked()
    {
        Assert.Equal(7900.05, Full.Rpm(7900.05));
        Assert.Equal(1.23456789, Full.Share(1.23456789));
        Assert.Equal(1234.5678, Full.Altitude(1234.5678).Value);
    }

    [Fact]
    public void Zero_has_no_sign()
    {
        Assert.Equal("0", $"{Metric.Rpm(-0.04)}");
        Assert.Equal("0", $"{Full.Rpm(-0.0)}");
        Assert.Equal("{\"value\":0,\"unit\":\"mm\"}", Json(Metric.Length(Length.FromMeters(-1e-9))));
    }

    [Fact]
    public void Quantities_leave_in_the_system_that_was_asked_for()
    {
        Assert.Equal("{\"value\":38.1,\"unit\":\"mm\"}", Json(Metric.Length(Length.FromInches(1.5))));
        Assert.Equal("{\"value\":1.5,\"unit\":\"in\"}", Json(Inch.Length(Length.FromInches(1.5))));
        Assert.Equal("{\"value\":100,\"unit\":\"N·m\"}", Json(Metric.Torque(Torque.FromNewtonMeters(100))));
        Assert.Equal("{\"value\":73.76,\"unit\":\"lbf·ft\"}", Json(Inch.Torque(Torque.FromNewtonMeters(100))));
        Assert.Equal("{\"value\":1500,\"unit\":\"m\"}", Json(Metric.Altitude(1500)));
        Assert.Equal("{\"value\":5000,\"unit\":\"ft\"}", Json(Inch.Altitude(1524)));
    }

    [Fact]
    public void A_measure_without_a_dimension_is_a_bare_number() =>
        Assert.Equal("{\"value\":12.346,\"unit\":\"\"}", Json(Inch.Measure(new Selection.Measure(12.3456, null))));

    [Fact]
    public void An_empty_station_is_not_listed()
    {
        Dictionary<StationName, double> masses = new() { [StationName.Tip] = 0.01, [StationName.Heel] = 0 };
        PartSet set = new("ds-96-201", "fw-valley-46", masses, "dv-9.0-9.0", "2", "hx-43-37");

        Assert.Equal("{\"tip\":{\"value\":10,\"unit\":\"g\"}}", Json(Metric.Parts(set).Flyweight.StationMasses));
    }

    private static string Json<T>(T value) => System.Text.Encoding.UTF8.GetString(WireJson.Bytes(value));

    private static AnswerWriter Writer(UnitSystem units, bool fullPrecision = false) =>
        new(SampleCatalog.Snapshot, new AnswerFormat(units, fullPrecision));
}
