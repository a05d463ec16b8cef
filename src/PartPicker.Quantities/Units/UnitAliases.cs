using System.Collections.Frozen;
using UnitsNet;
using UnitsNet.Units;

namespace PartPicker.Quantities;

/// <summary>The one closed table of unit spellings, by dimension, with exact factors to SI.</summary>
/// <remarks>
/// Where a force is part of the dimension, lb and kg mean the pull of standard gravity on that mass: no other
/// reading is possible there. "gr" is the grain; the gram is "g".
/// </remarks>
public static class UnitAliases
{
    // Exact by definition: NIST SP 811 (2008), appendix B.8; the international yard and pound of 1959.
    private const double KilogramsPerPound = 0.45359237;
    private const double GrainsPerPound = 7_000;
    private const double OuncesPerPound = 16;
    private const double MetersPerInch = 0.0254;
    private const double MetersPerFoot = 0.3048;
    private const double MetersPerMile = 1_609.344;
    private const double StandardGravity = 9.80665;

    // Derived from these, and so as exact as a double can be.
    private const double PoundForce = KilogramsPerPound * StandardGravity;
    private const double Horsepower = 550 * MetersPerFoot * PoundForce;
    private const double MetricHorsepower = 75 * StandardGravity;
    private const double PoundPerSquareInch = PoundForce / (MetersPerInch * MetersPerInch);

    // Conventional column of mercury of 13 595.1 kg/m³ under standard gravity.
    private const double InchOfMercury = 13_595.1 * StandardGravity * MetersPerInch;

    // Degrees in π radians.
    private const double HalfTurn = 180;

    private static readonly string[] FootPounds = ["lbf·ft", "ft·lbf", "ft·lb", "lb·ft", "ft·lbs", "lbs·ft"];
    private static readonly string[] InchPounds = ["lbf·in", "in·lbf", "in·lb", "lb·in", "in·lbs", "lbs·in"];
    private static readonly string[] NewtonMeters = ["N·m", "Nm"];
    private static readonly string[] NewtonMillimeters = ["N·mm", "Nmm"];
    private static readonly string[] KilogramMeters = ["kgf·m", "kg·m"];
    private static readonly string[] KilogramCentimeters = ["kgf·cm", "kg·cm"];
    private static readonly string[] Degrees = ["deg", "°", "º", "degree"];
    private static readonly string[] Radians = ["rad"];

    private static readonly DimensionUnits[] Table =
    [
        new(Length.Info, "a length", "38.1", metric: ("mm", 3), inch: ("in", 4),
        [
            Metric(LengthUnit.Millimeter, 1, 1_000, "mm", "millimeter", "millimeters", "millimetre", "millimetres"),
            Metric(LengthUnit.Centimeter, 1, 100, "cm", "centimeter", "centimeters", "centimetre", "centimetres"),
            Metric(LengthUnit.Meter, 1, 1, "m", "meter", "meters", "metre", "metres"),
            Customary(LengthUnit.Inch, 127, 5_000, "in", "inch", "inches", "in.", "\"", "″", "”", "''"),
            Customary(LengthUnit.Foot, 381, 1_250, "ft", "foot", "feet", "ft.", "'", "′", "’"),
            Customary(LengthUnit.Mil, 127, 5_000_000, "thou", "mil", "mils"),
        ]),

        // Flyweights and their station masses are weighed and sold in grams in both systems.
        new(Mass.Info, "a mass", "64.5", metric: ("g", 2), inch: ("g", 2),
        [
            Metric(MassUnit.Gram, 1, 1_000, "g", "gram", "grams"),
            Metric(MassUnit.Kilogram, 1, 1, "kg", "kilogram", "kilograms"),
            Metric(MassUnit.Milligram, 1, 1_000_000, "mg"),
            Metric(MassUnit.Grain, KilogramsPerPound, GrainsPerPound, "gr", "grain", "grains"),
            Customary(MassUnit.Ounce, KilogramsPerPound, OuncesPerPound, "oz", "oz.", "ounce", "ounces"),
            Customary(MassUnit.Pound, KilogramsPerPound, 1, "lb", "lbs", "lb.", "lbs.", "lbm", "pound", "pounds"),
        ]),

        new(Force.Info, "a force", "250", metric: ("N", 1), inch: ("lbf", 1),
        [
            Metric(ForceUnit.Newton, 1, 1, "N", "newton", "newtons"),
            Metric(ForceUnit.Decanewton, 10, 1, "daN"),
            Metric(ForceUnit.Kilonewton, 1_000, 1, "kN"),
            Customary(ForceUnit.PoundForce, PoundForce, 1,
                "lbf", "lb", "lbs", "lb.", "lbs.", "#", "pound", "pounds"),
            Metric(ForceUnit.KilogramForce, StandardGravity, 1, "kgf", "kg", "kp"),
        ]),

        new(Torque.Info, "a torque", "85", metric: ("N·m", 2), inch: ("lbf·ft", 2),
        [
            Metric(TorqueUnit.NewtonMeter, 1, 1, NewtonMeters),
            Metric(TorqueUnit.NewtonMillimeter, 1, 1_000, NewtonMillimeters),
            Metric(TorqueUnit.NewtonCentimeter, 1, 100, "N·cm", "Ncm"),
            Metric(TorqueUnit.KilonewtonMeter, 1_000, 1, "kN·m", "kNm"),
            Customary(TorqueUnit.PoundForceFoot, PoundForce * MetersPerFoot, 1, FootPounds),
            Customary(TorqueUnit.PoundForceInch, PoundForce * MetersPerInch, 1, InchPounds),
            Metric(TorqueUnit.KilogramForceMeter, StandardGravity, 1, KilogramMeters),
            Metric(TorqueUnit.KilogramForceCentimeter, StandardGravity, 100, KilogramCentimeters),
        ]),

        new(ForcePerLength.Info, "a force per length", "17.5", metric: ("N/mm", 3), inch: ("lbf/in", 2),
        [
            Metric(ForcePerLengthUnit.NewtonPerMillimeter, 1_000, 1, "N/mm"),
            Metric(ForcePerLengthUnit.NewtonPerCentimeter, 100, 1, "N/cm"),
            Metric(ForcePerLengthUnit.NewtonPerMeter, 1, 1, "N/m"),
            Metric(ForcePerLengthUnit.KilonewtonPerMeter, 1_000, 1, "kN/m"),
            Customary(ForcePerLengthUnit.PoundForcePerInch, PoundForce, MetersPerInch,
                "lbf/in", "lb/in", "lbs/in", "#/in", "lbf/inch", "lb/inch", "lbs/inch"),
            Customary(ForcePerLengthUnit.PoundForcePerFoot, PoundForce, MetersPerFoot,
                "lbf/ft", "lb/ft", "lbs/ft"),
            Metric(ForcePerLengthUnit.KilogramForcePerMillimeter, StandardGravity * 1_000, 1, "kgf/mm", "kg/mm"),
            Metric(ForcePerLengthUnit.KilogramForcePerCentimeter, StandardGravity * 100, 1, "kgf/cm", "kg/cm"),
        ]),

        new(RotationalStiffness.Info, "a torque per angle", "60", metric: ("N·mm/deg", 2), inch: ("lbf·in/deg", 3),
        [
            Metric(RotationalStiffnessUnit.NewtonMeterPerRadian, 1, 1, Per(NewtonMeters, Radians)),
            Metric(RotationalStiffnessUnit.NewtonMeterPerDegree, HalfTurn, Math.PI, Per(NewtonMeters, Degrees)),
            Metric(RotationalStiffnessUnit.NewtonMillimeterPerRadian, 1, 1_000, Per(NewtonMillimeters, Radians)),
            Metric(RotationalStiffnessUnit.NewtonMillimeterPerDegree, HalfTurn, 1_000 * Math.PI,
                Per(NewtonMillimeters, Degrees)),
            Customary(null, PoundForce * MetersPerInch, 1, Per(InchPounds, Radians)),
            Customary(null, PoundForce * MetersPerInch * HalfTurn, Math.PI, Per(InchPounds, Degrees)),
            Customary(RotationalStiffnessUnit.PoundForceFeetPerRadian, PoundForce * MetersPerFoot, 1,
                Per(FootPounds, Radians)),
            Customary(RotationalStiffnessUnit.PoundForceFootPerDegrees,
                PoundForce * MetersPerFoot * HalfTurn, Math.PI, Per(FootPounds, Degrees)),
            Metric(null, StandardGravity * HalfTurn, Math.PI, Per(KilogramMeters, Degrees)),
            Metric(null, StandardGravity * HalfTurn, 100 * Math.PI, Per(KilogramCentimeters, Degrees)),
        ]),

        new(Angle.Info, "an angle", "36", metric: ("deg", 3), inch: ("deg", 3),
        [
            Customary(AngleUnit.Degree, Math.PI, HalfTurn, [.. Degrees, "degrees"]),
            Metric(AngleUnit.Radian, 1, 1, "rad", "radian", "radians"),
        ]),

        new(Temperature.Info, "a temperature", "20", metric: ("°C", 1), inch: ("°F", 1),
        [
            WithOffset(TemperatureUnit.DegreeCelsius, 273.15, 1, 1,
                "°C", "C", "ºC", "℃", "deg C", "degC", "celsius"),
            WithOffset(TemperatureUnit.DegreeFahrenheit, 459.67, 5, 9,
                "°F", "F", "ºF", "℉", "deg F", "degF", "fahrenheit"),
            Metric(TemperatureUnit.Kelvin, 1, 1, "K", "kelvin"),
        ]),

        new(RotationalSpeed.Info, "a rotational speed", "8200", metric: ("rpm", 1), inch: ("rpm", 1),
        [
            Customary(RotationalSpeedUnit.RevolutionPerMinute, Math.PI, 30, "rpm", "r/min", "rev/min"),
            Metric(RotationalSpeedUnit.RadianPerSecond, 1, 1, "rad/s"),
        ]),

        new(Power.Info, "a power", "110", metric: ("kW", 2), inch: ("hp", 2),
        [
            Metric(PowerUnit.Kilowatt, 1_000, 1, "kW"),
            Metric(PowerUnit.Watt, 1, 1, "W", "watt", "watts"),
            Customary(PowerUnit.MechanicalHorsepower, Horsepower, 1, "hp", "bhp", "horsepower"),
            Customary(PowerUnit.MetricHorsepower, MetricHorsepower, 1, "PS", "cv"),
        ]),

        new(Speed.Info, "a speed", "120", metric: ("km/h", 1), inch: ("mph", 1),
        [
            Metric(SpeedUnit.KilometerPerHour, 10, 36, "km/h", "kph", "kmh"),
            Metric(SpeedUnit.MeterPerSecond, 1, 1, "m/s"),
            Customary(SpeedUnit.MilePerHour, MetersPerMile, 3_600, "mph", "mi/h"),
            Customary(SpeedUnit.FootPerSecond, 381, 1_250, "ft/s", "fps"),
        ]),

        // Answers state stresses and moduli; a barometer is only ever read.
        new(Pressure.Info, "a pressure", "860", metric: ("MPa", 1), inch: ("psi", 0),
        [
            Metric(PressureUnit.Megapascal, 1_000_000, 1, "MPa", "N/mm²", "N/mm2"),
            Metric(PressureUnit.Gigapascal, 1_000_000_000, 1, "GPa"),
            Metric(PressureUnit.Kilopascal, 1_000, 1, "kPa"),
            Metric(PressureUnit.Hectopascal, 100, 1, "hPa"),
            Metric(PressureUnit.Pascal, 1, 1, "Pa"),
            Metric(PressureUnit.Bar, 100_000, 1, "bar"),
            Metric(PressureUnit.Millibar, 100, 1, "mbar"),
            Customary(PressureUnit.PoundForcePerSquareInch, PoundPerSquareInch, 1,
                "psi", "lbf/in²", "lbf/in2", "lb/in²", "lb/in2"),
            Customary(PressureUnit.KilopoundForcePerSquareInch, PoundPerSquareInch * 1_000, 1, "ksi"),
            Customary(PressureUnit.InchOfMercury, InchOfMercury, 1, "inHg", "in Hg"),
            Metric(PressureUnit.KilogramForcePerSquareMillimeter, StandardGravity * 1_000_000, 1,
                "kgf/mm²", "kgf/mm2", "kg/mm²", "kg/mm2"),
        ]),

        new(Ratio.Info, "a share in percent", "60", metric: ("%", 1), inch: ("%", 1),
        [
            Customary(RatioUnit.Percent, 1, 100, "%", "percent"),
        ]),

        new(LinearDensity.Info, "a mass per length", "0.45", metric: ("kg/m", 3), inch: ("lb/ft", 3),
        [
            Metric(LinearDensityUnit.KilogramPerMeter, 1, 1, "kg/m"),
            Metric(LinearDensityUnit.GramPerMeter, 1, 1_000, "g/m"),
            Metric(LinearDensityUnit.GramPerCentimeter, 1, 10, "g/cm"),
            Metric(LinearDensityUnit.GramPerMillimeter, 1, 1, "g/mm"),
            Customary(LinearDensityUnit.PoundPerFoot, KilogramsPerPound, MetersPerFoot, "lb/ft", "lbs/ft", "lbm/ft"),
            Customary(LinearDensityUnit.PoundPerInch, KilogramsPerPound, MetersPerInch, "lb/in", "lbs/in", "lbm/in"),
        ]),
    ];

    private static readonly FrozenDictionary<string, DimensionUnits> ByName =
        Table.ToFrozenDictionary(dimension => dimension.Info.Name);

    /// <summary>Every dimension that is read and written.</summary>
    public static IReadOnlyList<DimensionUnits> Dimensions => Table;

    /// <summary>The units of a dimension.</summary>
    /// <exception cref="ArgumentException">No such dimension: a fault of the caller, not of a text.</exception>
    public static DimensionUnits For(QuantityInfo dimension)
    {
        ArgumentNullException.ThrowIfNull(dimension);
        return ByName.TryGetValue(dimension.Name, out DimensionUnits? units)
            ? units
            : throw new ArgumentException($"No unit of {dimension.Name} is known here.", nameof(dimension));
    }

    private static NamedUnit Metric(Enum? unit, double times, double over, params string[] spellings) =>
        new(unit, times, over, spellings, anyCase: false);

    private static NamedUnit Customary(Enum? unit, double times, double over, params string[] spellings) =>
        new(unit, times, over, spellings, anyCase: true);

    private static NamedUnit WithOffset(
        Enum unit, double offset, double times, double over, params string[] spellings) =>
        new(unit, times, over, spellings, anyCase: true, offset);

    private static string[] Per(string[] torques, string[] angles) =>
        [.. angles.SelectMany(angle => torques, (angle, torque) => $"{torque}/{angle}")];
}
