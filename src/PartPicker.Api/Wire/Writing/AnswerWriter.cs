using PartPicker.Parts;
using PartPicker.Quantities;
using PartPicker.Selection;
using UnitsNet;

namespace PartPicker.Api.Wire;

/// <summary>Writes numbers, quantities and sets of parts; every answer is made of these.</summary>
/// <remarks>
/// Numbers leave rounded unless they are asked for in full: what a last digit of a machine's arithmetic says
/// must not make two answers differ.
/// </remarks>
internal sealed class AnswerWriter(CatalogSnapshot catalog, AnswerFormat format)
{
    private const int RpmDecimals = 1;
    private const int RatioDecimals = 4;
    private const int ShareDecimals = 3;
    private const int FactorDecimals = 6;
    private const int AltitudeDecimals = 1;
    private const double MetresPerFoot = 0.3048;

    public AnswerFormat Format => format;

    public CatalogSnapshot Catalog => catalog;

    public double Rpm(double rpm) => Rounded(rpm, RpmDecimals);

    public double? Rpm(double? rpm) => rpm is { } value ? Rpm(value) : null;

    public double Ratio(double ratio) => Rounded(ratio, RatioDecimals);

    /// <summary>A bare number near one: miss and slip margin.</summary>
    public double Share(double value) => Rounded(value, ShareDecimals);

    public double? Share(double? value) => value is { } share ? Share(share) : null;

    /// <summary>A factor that is multiplied by, and so stated more finely.</summary>
    public double Factor(double value) => Rounded(value, FactorDecimals);

    public QuantityWire Length(Length length) => Quantity(length.Meters, UnitsNet.Length.Info);

    public QuantityWire Force(Force force) => Quantity(force.Newtons, UnitsNet.Force.Info);

    public QuantityWire Torque(Torque torque) => Quantity(torque.NewtonMeters, UnitsNet.Torque.Info);

    public QuantityWire Power(Power power) => Quantity((double)power.Watts, UnitsNet.Power.Info);

    public QuantityWire Angle(Angle angle) => Quantity(angle.Radians, UnitsNet.Angle.Info);

    public QuantityWire Speed(Speed speed) => Quantity(speed.MetersPerSecond, UnitsNet.Speed.Info);

    /// <summary>Altitude, which nobody states in the millimetres or inches of a part.</summary>
    public QuantityWire Altitude(double metres) => format.Units == Quantities.UnitSystem.Inch
        ? new QuantityWire { Value = Rounded(metres / MetresPerFoot, AltitudeDecimals), Unit = "ft" }
        : new QuantityWire { Value = Rounded(metres, AltitudeDecimals), Unit = "m" };

    public QuantityWire? Temperature(double? kelvins) =>
        kelvins is { } value ? Quantity(value, UnitsNet.Temperature.Info) : null;

    public QuantityWire? Percent(double? share) =>
        share is { } value ? Quantity(value, UnitsNet.Ratio.Info) : null;

    public QuantityWire Quantity(double si, QuantityInfo dimension)
    {
        WrittenQuantity written = QuantityWriter.Write(si, dimension, format.Units, format.FullPrecision);
        return new QuantityWire { Value = written.Value, Unit = written.Unit };
    }

    /// <summary>A measure of a rule that compares numbers; null for a rule of words.</summary>
    public QuantityWire? MeasureOrNull(Measure measure, Measure other) =>
        measure == default && other == default ? null : Measure(measure);

    public QuantityWire Measure(Measure measure) => measure.Dimension is { } dimension
        ? Quantity(measure.Value, dimension)
        : new QuantityWire { Value = Share(measure.Value), Unit = "" };

    public PartsWire Parts(PartSet set) => new()
    {
        DriveSpring = Named(set.DriveSpring),
        Shims = set.Shims is { } shims
            ? new FittedShimsWire { Id = shims.ShimId, Name = NameOf(shims.ShimId), Count = shims.Count }
            : null,
        Flyweight = new FlyweightChoiceWire
        {
            Id = set.Flyweight, Name = NameOf(set.Flyweight), AdjusterStep = set.AdjusterStep,
            StationMasses = StationMasses(set),
        },
        DrivenSpring = Named(set.DrivenSpring),
        Hole = set.Hole,
        Helix = Named(set.Helix),
    };

    private OrderedDictionary<string, QuantityWire> StationMasses(PartSet set)
    {
        OrderedDictionary<string, QuantityWire> masses = [];
        foreach ((StationName station, double mass) in set.StationMasses.OrderBy(pair => pair.Key))
        {
            if (mass != 0)
                masses.Add(WireJson.Word(station), Quantity(mass, Mass.Info));
        }

        return masses;
    }

    private NamedIdWire Named(string partId) => new() { Id = partId, Name = NameOf(partId) };

    private string NameOf(string partId) => catalog.FindPart(partId)?.Name ?? "";

    // Away from zero, as on paper; −0 becomes 0.
    private double Rounded(double value, int decimals) =>
        (format.FullPrecision ? value : Math.Round(value, decimals, MidpointRounding.AwayFromZero)) + 0.0;
}
