using PartPicker.Mechanics;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>Takes apart what the air leaves of the torque.</summary>
internal sealed class AirTree(Scene scene, TreeNodes nodes)
{
    private readonly AirCorrection law = MachineModel.Correction(scene.Law);

    /// <summary>λ, with what boost makes up for.</summary>
    public ExplainedValue TorqueFactor()
    {
        Air here = Here();
        if (scene.Machine.Profile.Engine.BoostedTo is not { } boostedTo)
            return Factor("torqueFactor", here);
        return nodes.Of(
            "torqueFactor", scene.TorqueFactor, "", Relations.BoostedTorqueFactor,
            () =>
            [
                Altitude(here),
                nodes.Input("engine.boostedTo", boostedTo.Meters, "m"),
                .. here.Altitude > boostedTo
                    ? [Factor("unboostedFactor", here), Factor("unboostedFactor", WhereBoostEnds(here, boostedTo))]
                    : Array.Empty<ExplainedValue>(),
            ]);
    }

    private Air Here()
    {
        Length altitude = Length.FromMeters(scene.Air.AltitudeM);
        Air air = scene.Air.TemperatureK is { } kelvin
            ? new Air(nodes, altitude, Temperature.FromKelvins(kelvin), () => nodes.Input("temperature", kelvin, Temperature.Info))
            : Standard(nodes, altitude);
        return air with { Humidity = scene.Air.RelativeHumidity };
    }

    // The day is as much warmer or colder than the standard one there as it is here, and as humid.
    private Air WhereBoostEnds(Air here, Length boostedTo)
    {
        Air standard = Standard(nodes.Within("boostedTo"), boostedTo) with { Humidity = here.Humidity };
        if (scene.Air.TemperatureK is null)
            return standard;
        Air standardHere = Standard(nodes.Within("standardDay"), here.Altitude);
        Temperature temperature = Atmosphere.SameDayTemperature(here.Temperature, here.Altitude, boostedTo);
        return standard with
        {
            Temperature = temperature,
            TemperatureNode = () => standard.Nodes.Of(
                "temperature", temperature.Kelvins, Temperature.Info, Relations.SameDayTemperature,
                () =>
                [
                    Standard(nodes.Within("standardDay/boostedTo"), boostedTo).TemperatureNode(),
                    here.TemperatureNode(),
                    standardHere.TemperatureNode(),
                ]),
        };
    }

    private static Air Standard(TreeNodes nodes, Length altitude)
    {
        Temperature temperature = Atmosphere.StandardTemperature(altitude);
        return new Air(
            nodes, altitude, temperature,
            () => nodes.Of(
                "temperature", temperature.Kelvins, Temperature.Info, Relations.StandardTemperature,
                () => [nodes.Input("altitude", altitude.Meters, "m")]));
    }

    private ExplainedValue Factor(string name, Air air) => air.Nodes.Of(
        name, Atmosphere.TorqueFactor(law, air.Altitude, air.Temperature, air.Humidity), "", Relations.TorqueFactor,
        () => [Correction(Standard(nodes.Within("seaLevel"), Length.Zero)), Correction(air)]);

    private ExplainedValue Correction(Air air) => air.Nodes.Of(
        "airCorrection", Atmosphere.Correction(law, DryPressure(air), air.Temperature), "",
        law == AirCorrection.Iso1585 ? Relations.CorrectionIso1585 : Relations.CorrectionSaeJ1349,
        () => [Dry(air), air.TemperatureNode()]);

    private static Pressure DryPressure(Air air) => Atmosphere.DryPressureAt(air.Altitude, air.Temperature, air.Humidity);

    private static ExplainedValue Dry(Air air)
    {
        return air.Humidity is { } share
            ? air.Nodes.Of(
                "dryPressure", DryPressure(air).Kilopascals, "kPa", Relations.DryPressure,
                () =>
                [
                    Whole(),
                    air.Nodes.Input("relativeHumidity", share),
                    air.Nodes.Of(
                        "saturationPressure", Atmosphere.SaturationPressure(air.Temperature).Kilopascals, "kPa",
                        Relations.SaturationPressure, () => [air.TemperatureNode()]),
                ])
            : Whole();

        ExplainedValue Whole() => air.Nodes.Of(
            "pressure", Atmosphere.PressureAt(air.Altitude).Kilopascals, "kPa", Relations.StandardPressure, () => [Altitude(air)]);
    }

    private static ExplainedValue Altitude(Air air) => air.Nodes.Input("altitude", air.Altitude.Meters, "m");

    /// <summary>The air at one altitude.</summary>
    private sealed record Air(
        TreeNodes Nodes, Length Altitude, Temperature Temperature, Func<ExplainedValue> TemperatureNode)
    {
        /// <summary>Relative humidity; null: dry.</summary>
        public double? Humidity { get; init; }
    }
}
