using PartPicker.Mechanics;
using Engine = PartPicker.Parts.Engine;

namespace PartPicker.Selection;

/// <summary>Takes torque and power of the engine apart.</summary>
internal sealed class EngineTree(Scene scene, TreeNodes nodes)
{
    public ExplainedValue Torque(double rpm) => nodes.Of(
        "engineTorque", scene.Model.TorqueAt(rpm), UnitsNet.Torque.Info, Relations.EngineTorque,
        () => [new AirTree(scene, nodes).TorqueFactor(), AtSeaLevel(rpm)]);

    public ExplainedValue Power(PointLoads point, Func<ExplainedValue> speed) => nodes.Of(
        "power", point.Loads.Power, UnitsNet.Power.Info, Relations.Power, () => [Torque(point.Loads.Rpm), speed()]);

    public ExplainedValue PeakPower()
    {
        TreeNodes there = nodes.Within("atPeakPower");
        return nodes.Of(
            ExplainedNames.PeakPower, scene.Model.PeakPower, UnitsNet.Power.Info, Relations.PeakPower,
            () =>
            [
                new AirTree(scene, nodes).TorqueFactor(),
                new EngineTree(scene, there).AtSeaLevel(scene.Model.PeakPowerRpm),
                there.Input("engineSpeed", scene.Model.PeakPowerRpm, "rpm"),
            ]);
    }

    private ExplainedValue AtSeaLevel(double rpm)
    {
        Engine engine = scene.Machine.Profile.Engine;
        double torque = scene.Drivetrain.Engine.At(rpm);
        ExplainedValue speed = nodes.Input("engineSpeed", rpm, "rpm");
        if (engine.PeakTorqueRpm is { } torqueRpm)
        {
            return nodes.Of(
                "engineTorqueAtSeaLevel", torque, UnitsNet.Torque.Info, Relations.TwoPeaks,
                () =>
                [
                    speed,
                    nodes.Input("engine.peakTorqueRpm", torqueRpm, "rpm"),
                    nodes.Input("engine.peakTorque", engine.PeakTorque!.Value.NewtonMeters, UnitsNet.Torque.Info),
                    nodes.Input("engine.peakPowerRpm", engine.PeakPowerRpm!.Value, "rpm"),
                    nodes.Input("engine.peakPower", (double)engine.PeakPower!.Value.Watts, UnitsNet.Power.Info),
                ]);
        }

        return nodes.Of(
            "engineTorqueAtSeaLevel", torque, UnitsNet.Torque.Info, Relations.TorqueCurve,
            () =>
            [
                speed,
                .. CurveParts.Smooth(
                    nodes, "engine.torqueCurve", [.. engine.TorqueCurve.Select(p => (p.X, p.Y))], rpm,
                    new("speed", null, "rpm"), new("torque", UnitsNet.Torque.Info)),
            ]);
    }
}
