using PartPicker.Quantities;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Quantities;

public class UnitAliasTests
{
    // One of each unit in SI, worked out by exact arithmetic from the definitions in NIST SP 811 (2008), B.8 and
    // B.9, and rounded to 17 digits: 1 in = 0.0254 m, 1 lb = 0.45359237 kg, g = 9.80665 m/s².
    private static readonly (QuantityInfo Dimension, double Si, string[] Spellings)[] Rows =
    [
        (Length.Info, 0.001, ["mm", "millimeter", "millimeters", "millimetre", "millimetres"]),
        (Length.Info, 0.01, ["cm", "centimeter", "centimeters", "centimetre", "centimetres"]),
        (Length.Info, 1, ["m", "meter", "meters", "metre", "metres"]),
        (Length.Info, 0.0254, ["in", "inch", "inches", "in.", "\"", "″", "”", "''"]),
        (Length.Info, 0.3048, ["ft", "foot", "feet", "ft.", "'", "′", "’"]),
        (Length.Info, 2.54e-5, ["thou", "mil", "mils"]),

        (Mass.Info, 1e-6, ["mg"]),
        (Mass.Info, 0.001, ["g", "gram", "grams"]),
        (Mass.Info, 1, ["kg", "kilogram", "kilograms"]),
        (Mass.Info, 6.479891e-5, ["gr", "grain", "grains"]),
        (Mass.Info, 0.028349523125, ["oz", "oz.", "ounce", "ounces"]),
        (Mass.Info, 0.45359237, ["lb", "lbs", "lb.", "lbs.", "lbm", "pound", "pounds"]),

        (Force.Info, 1, ["N", "newton", "newtons"]),
        (Force.Info, 10, ["daN"]),
        (Force.Info, 1000, ["kN"]),
        (Force.Info, 4.4482216152605, ["lbf", "lb", "lbs", "lb.", "lbs.", "#", "pound", "pounds"]),
        (Force.Info, 9.80665, ["kgf", "kg", "kp"]),

        (Torque.Info, 1, ["N·m", "Nm"]),
        (Torque.Info, 0.01, ["N·cm", "Ncm"]),
        (Torque.Info, 0.001, ["N·mm", "Nmm"]),
        (Torque.Info, 1000, ["kN·m", "kNm"]),
        (Torque.Info, 1.3558179483314004, ["lbf·ft", "ft·lbf", "ft·lb", "lb·ft", "ft·lbs", "lbs·ft"]),
        (Torque.Info, 0.1129848290276167, ["lbf·in", "in·lbf", "in·lb", "lb·in", "in·lbs", "lbs·in"]),
        (Torque.Info, 9.80665, ["kgf·m", "kg·m"]),
        (Torque.Info, 0.0980665, ["kgf·cm", "kg·cm"]),

        (ForcePerLength.Info, 1000, ["N/mm"]),
        (ForcePerLength.Info, 100, ["N/cm"]),
        (ForcePerLength.Info, 1, ["N/m"]),
        (ForcePerLength.Info, 1000, ["kN/m"]),
        (ForcePerLength.Info, 175.12683524647638,
            ["lbf/in", "lb/in", "lbs/in", "#/in", "lbf/inch", "lb/inch", "lbs/inch"]),
        (ForcePerLength.Info, 14.593902937206365, ["lbf/ft", "lb/ft", "lbs/ft"]),
        (ForcePerLength.Info, 9806.65, ["kgf/mm", "kg/mm"]),
        (ForcePerLength.Info, 980.665, ["kgf/cm", "kg/cm"]),

        (RotationalStiffness.Info, 1, ["N·m/rad", "Nm/rad"]),
        (RotationalStiffness.Info, 0.001, ["N·mm/rad", "Nmm/rad"]),
        (RotationalStiffness.Info, 57.295779513082321,
            ["N·m/deg", "Nm/deg", "N·m/°", "Nm/°", "N·m/º", "Nm/º", "N·m/degree", "Nm/degree"]),
        (RotationalStiffness.Info, 0.057295779513082321,
            ["N·mm/deg", "Nmm/deg", "N·mm/°", "Nmm/°", "N·mm/º", "Nmm/º", "N·mm/degree", "Nmm/degree"]),
        (RotationalStiffness.Info, 0.1129848290276167,
            ["lbf·in/rad", "in·lbf/rad", "in·lb/rad", "lb·in/rad", "in·lbs/rad", "lbs·in/rad"]),
        (RotationalStiffness.Info, 6.4735538522896296,
        [
            "lbf·in/deg", "in·lbf/deg", "in·lb/deg", "lb·in/deg", "in·lbs/deg", "lbs·in/deg",
            "lbf·in/°", "in·lbf/°", "in·lb/°", "lb·in/°", "in·lbs/°", "lbs·in/°",
            "lbf·in/º", "in·lbf/º", "in·lb/º", "lb·in/º", "in·lbs/º", "lbs·in/º",
            "lbf·in/degree", "in·lbf/degree", "in·lb/degree", "lb·in/degree", "in·lbs/degree", "lbs·in/degree",
        ]),
        (RotationalStiffness.Info, 1.3558179483314004,
            ["lbf·ft/rad", "ft·lbf/rad", "ft·lb/rad", "lb·ft/rad", "ft·lbs/rad", "lbs·ft/rad"]),
        (RotationalStiffness.Info, 77.682646227475556,
        [
            "lbf·ft/deg", "ft·lbf/deg", "ft·lb/deg", "lb·ft/deg", "ft·lbs/deg", "lbs·ft/deg",
            "lbf·ft/°", "ft·lbf/°", "ft·lb/°", "lb·ft/°", "ft·lbs/°", "lbs·ft/°",
            "lbf·ft/º", "ft·lbf/º", "ft·lb/º", "lb·ft/º", "ft·lbs/º", "lbs·ft/º",
            "lbf·ft/degree", "ft·lbf/degree", "ft·lb/degree", "lb·ft/degree", "ft·lbs/degree", "lbs·ft/degree",
        ]),
        (RotationalStiffness.Info, 561.87965616196874,
        [
            "kgf·m/deg", "kg·m/deg", "kgf·m/°", "kg·m/°",
            "kgf·m/º", "kg·m/º", "kgf·m/degree", "kg·m/degree",
        ]),
        (RotationalStiffness.Info, 5.6187965616196874,
        [
            "kgf·cm/deg", "kg·cm/deg", "kgf·cm/°", "kg·cm/°",
            "kgf·cm/º", "kg·cm/º", "kgf·cm/degree", "kg·cm/degree",
        ]),

        (Angle.Info, 0.017453292519943296, ["deg", "°", "º", "degree", "degrees"]),
        (Angle.Info, 1, ["rad", "radian", "radians"]),

        (Temperature.Info, 1, ["K", "kelvin"]),
        (Temperature.Info, 274.15, ["°C", "C", "ºC", "℃", "deg C", "degC", "celsius"]),
        (Temperature.Info, 255.92777777777778, ["°F", "F", "ºF", "℉", "deg F", "degF", "fahrenheit"]),

        (RotationalSpeed.Info, 0.10471975511965977, ["rpm", "r/min", "rev/min"]),
        (RotationalSpeed.Info, 1, ["rad/s"]),

        (Power.Info, 1, ["W", "watt", "watts"]),
        (Power.Info, 1000, ["kW"]),
        (Power.Info, 745.69987158227022, ["hp", "bhp", "horsepower"]),
        (Power.Info, 735.49875, ["PS", "cv"]),

        (Speed.Info, 0.27777777777777778, ["km/h", "kph", "kmh"]),
        (Speed.Info, 1, ["m/s"]),
        (Speed.Info, 0.44704, ["mph", "mi/h"]),
        (Speed.Info, 0.3048, ["ft/s", "fps"]),

        (Pressure.Info, 1, ["Pa"]),
        (Pressure.Info, 100, ["hPa"]),
        (Pressure.Info, 1e3, ["kPa"]),
        (Pressure.Info, 1e6, ["MPa", "N/mm²", "N/mm2"]),
        (Pressure.Info, 1e9, ["GPa"]),
        (Pressure.Info, 1e5, ["bar"]),
        (Pressure.Info, 100, ["mbar"]),
        (Pressure.Info, 6894.7572931683613, ["psi", "lbf/in²", "lbf/in2", "lb/in²", "lb/in2"]),
        (Pressure.Info, 6894757.2931683613, ["ksi"]),
        (Pressure.Info, 3386.388640341, ["inHg", "in Hg"]),
        (Pressure.Info, 9806650, ["kgf/mm²", "kgf/mm2", "kg/mm²", "kg/mm2"]),

        (Ratio.Info, 0.01, ["%", "percent"]),

        (LinearDensity.Info, 1, ["kg/m"]),
        (LinearDensity.Info, 0.001, ["g/m"]),
        (LinearDensity.Info, 0.1, ["g/cm"]),
        (LinearDensity.Info, 1, ["g/mm"]),
        (LinearDensity.Info, 1.4881639435695538, ["lb/ft", "lbs/ft", "lbm/ft"]),
        (LinearDensity.Info, 17.857967322834646, ["lb/in", "lbs/in", "lbm/in"]),
    ];

    public static TheoryData<string, string, double> Spellings()
    {
        var data = new TheoryData<string, string, double>();
        foreach ((QuantityInfo dimension, double si, string[] spellings) in Rows)
        {
            foreach (string spelling in spellings)
                data.Add(dimension.Name, spelling, si);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Spellings))]
    public void A_spelling_is_read_with_its_factor(string dimension, string spelling, double si)
    {
        foreach (string text in new[] { $"1 {spelling}", $"1{spelling}", $" 1.0\u00A0{spelling} " })
            Readings.AssertRead(si, QuantityReader.Read(text, Readings.Dimension(dimension)), 1e-14);

        Readings.AssertRead(si, QuantityReader.Read(1, spelling, Readings.Dimension(dimension)), 1e-14);
    }

    [Fact]
    public void The_table_has_these_spellings_and_no_other()
    {
        IEnumerable<(string, string)> expected = Rows.SelectMany(
            row => row.Spellings, (row, spelling) => (row.Dimension.Name, spelling));
        IEnumerable<(string, string)> known = UnitAliases.Dimensions.SelectMany(
            dimension => dimension.Units.SelectMany(unit => unit.Spellings),
            (dimension, spelling) => (dimension.Info.Name, spelling));

        Assert.Equal(expected.Order(StringPair), known.Order(StringPair));
    }

    private static readonly Comparer<(string, string)> StringPair = Comparer<(string, string)>.Create((a, b) =>
        (string.CompareOrdinal(a.Item1, b.Item1), string.CompareOrdinal(a.Item2, b.Item2)) switch
        {
            (0, var second) => second,
            (var first, _) => first,
        });

    [Fact]
    public void No_two_units_of_a_dimension_differ_by_capitals_alone()
    {
        foreach (DimensionUnits dimension in UnitAliases.Dimensions)
        {
            IEnumerable<string> all = dimension.Units.SelectMany(unit => unit.Spellings);
            Assert.Equal(all, all.Distinct(StringComparer.OrdinalIgnoreCase));
        }
    }

    [Theory]
    [InlineData("85 N·m", 85)]
    [InlineData("85 N⋅m", 85)]
    [InlineData("85 N*m", 85)]
    [InlineData("85 N m", 85)]
    [InlineData("85 N.m", 85)]
    [InlineData("85 N-m", 85)]
    [InlineData("2 ft-lb", 2.7116358966628008)]
    [InlineData("2 lb-ft", 2.7116358966628008)]
    [InlineData("2 ft lbs", 2.7116358966628008)]
    [InlineData("2 in*lb", 0.2259696580552334)]
    public void A_product_is_read_with_any_sign_between(string text, double si) =>
        Readings.AssertRead(si, QuantityReader.Read(text, Torque.Info), 1e-14);

    [Theory]
    [InlineData("Length", "1.5 IN", 0.0381)]
    [InlineData("Length", "1.5 Inch", 0.0381)]
    [InlineData("Mass", "2 LBS", 0.90718474)]
    [InlineData("ForcePerLength", "2 LB/IN", 350.25367049295276)]
    [InlineData("Torque", "2 Ft-Lbs", 2.7116358966628008)]
    [InlineData("RotationalSpeed", "30 RPM", Math.PI)]
    [InlineData("Power", "2 HP", 1491.3997431645404)]
    [InlineData("Temperature", "20 c", 293.15)]
    public void Capitals_do_not_matter_where_no_prefix_could_be_meant(string dimension, string text, double si) =>
        Readings.AssertRead(si, QuantityReader.Read(text, Readings.Dimension(dimension)), 1e-14);

    [Theory]
    [InlineData("Length", "5 Mm", "Mm", "mm")]
    [InlineData("Length", "38MM", "MM", "mm")]
    [InlineData("Length", "5 M", "M", "m")]
    [InlineData("Mass", "5 KG", "KG", "kg")]
    [InlineData("Mass", "60 G", "G", "g")]
    [InlineData("Mass", "60 GR", "GR", "gr")]
    [InlineData("Force", "5 n", "n", "N")]
    [InlineData("Torque", "5 n-m", "n-m", "N-m")]
    [InlineData("Pressure", "5 mPa", "mPa", "MPa")]
    [InlineData("Power", "5 KW", "KW", "kW")]
    public void Capitals_matter_where_a_prefix_could_be_meant(
        string dimension, string text, string sent, string right) =>
        Assert.Equal(
            $"Capitals matter in \"{sent}\": write \"{right}\" if that is meant.",
            QuantityReader.Read(text, Readings.Dimension(dimension)).Problem);

    [Fact]
    public void A_grain_is_not_a_gram()
    {
        Readings.AssertRead(0.0550790735, QuantityReader.Read("850 gr", Mass.Info), 1e-14);
        Readings.AssertRead(0.85, QuantityReader.Read("850 g", Mass.Info), 1e-14);
    }

    [Fact]
    public void A_dimension_without_units_is_a_fault_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => QuantityReader.Read("1 A", ElectricCurrent.Info));
}
