using PartPicker.Mechanics;
using UnitsNet;
using static PartPicker.Selection.TreeNodes;

namespace PartPicker.Selection;

/// <summary>Takes clamp, tensions and thrust of the belt apart.</summary>
internal sealed class ThrustTree(Scene scene, TreeNodes nodes)
{
    private readonly Drivetrain machine = scene.Drivetrain;
    private readonly BeltTree belt = new(scene, nodes);

    /// <summary>a_b F_d: what the belt asks of the drive clutch.</summary>
    public ExplainedValue Asked(PointLoads point) => nodes.Of(
        "driveThrust", point.Loads.DriveThrust, Force.Info, Relations.AnchoredThrust, () => [Factor(), OfBelt(point)]);

    /// <summary>a_b: it has a tree of its own where a run tells it, and is 1 elsewhere.</summary>
    public ExplainedValue Factor() => scene.Run is not null
        ? Elsewhere(ExplainedNames.ThrustFactor, scene.Model.Anchor.Thrust, "", Relations.ThrustFactor)
        : nodes.Input("thrustFactor", scene.Model.Anchor.Thrust);

    /// <summary>F_d by the belt alone.</summary>
    public ExplainedValue OfBelt(PointLoads point)
    {
        double thrust = point.Loads.Belt.DriveThrust;
        return machine.ThrustForm == DriveThrustForm.Locked
            ? nodes.Of(
                "beltThrust", thrust, Force.Info, Relations.LockedThrust,
                () => [Tight(point), belt.DriveWrap(point), belt.HalfAngle()])
            : nodes.Of(
                "beltThrust", thrust, Force.Info, Relations.DriveThrust,
                () => [Tight(point), belt.DriveWrap(point), DriveArc(point), Effective(point), DriveGroove(point), belt.HalfAngle()]);
    }

    /// <summary>F_g: the thrust below which the drive sheave slips on its whole wrap.</summary>
    public ExplainedValue Grip(PointLoads point) => nodes.Of(
        "gripThrust",
        new BeltThrust(
            machine.GrooveHalfAngle, machine.FrictionAt(point.Position.DriveRadius), point.Position.DriveWrap,
            point.Position.DrivenWrap).SlipEdge(EffectiveTension(point)),
        Force.Info, Relations.GripThrust, () => [Effective(point), DriveGroove(point), belt.HalfAngle()]);

    public ExplainedValue? SlipMargin(string name, PointLoads point)
    {
        double margin = point.Loads.Belt.SlipMargin;
        if (double.IsNaN(margin))
            return null;
        return nodes.Of(
            name, margin, "", point.Loads.Belt.DrivenSlips ? Relations.SlippingMargin : Relations.SlipMargin,
            () =>
            [
                belt.DriveWrap(point),
                DriveArc(point),
                belt.DrivenWrap(point),
                nodes.Of(
                    "drivenActiveArc", point.Loads.Belt.ActiveArc, Angle.Info, Relations.ActiveArc,
                    () => [Tight(point), Slack(point), DrivenGroove(point)]),
                .. point.Loads.Belt.DrivenSlips
                    ? [Clamp(point), Effective(point), DrivenGroove(point), belt.HalfAngle()]
                    : Array.Empty<ExplainedValue>(),
            ]);
    }

    private ExplainedValue DriveArc(PointLoads point) => nodes.Of(
        "driveActiveArc", point.Loads.Belt.DriveActiveArc, Angle.Info, Relations.ActiveArc,
        () => [Tight(point), Slack(point), DriveGroove(point)]);

    private ExplainedValue Tight(PointLoads point) => nodes.Of(
        "tightTensionNet", point.Loads.Belt.TightNet, Force.Info, Relations.TightTension,
        () => [Slack(point), Effective(point)]);

    private ExplainedValue Slack(PointLoads point)
    {
        double slack = point.Loads.Belt.SlackNet;
        return point.Loads.Belt.DrivenSlips
            ? nodes.Of(
                "slackTensionNet", slack, Force.Info, Relations.SlippingTension,
                () => [Effective(point), DrivenGroove(point), belt.DrivenWrap(point)])
            : nodes.Of(
                "slackTensionNet", slack, Force.Info, Relations.BeltTension,
                () => [Clamp(point), Effective(point), DrivenGroove(point), belt.DrivenWrap(point), belt.HalfAngle()]);
    }

    private ExplainedValue Effective(PointLoads point) => nodes.Of(
        "effectiveTension", EffectiveTension(point), Force.Info, Relations.EffectiveTension,
        () => [new EngineTree(scene, nodes).Torque(point.Loads.Rpm), belt.DriveRadius(point)]);

    private ExplainedValue Clamp(PointLoads point)
    {
        var spring = new SpringTree(scene, nodes);
        var helix = new HelixTree(scene, nodes);
        return nodes.Of(
            "drivenClamp", point.Loads.DrivenClamp, Force.Info, Relations.DrivenClamp,
            () =>
            [
                spring.Driven(point),
                spring.TwistTorque(point),
                Field("drivenClutch.camTorqueShare", machine.CamTorqueShare),
                Field("belt.efficiency", machine.BeltEfficiency),
                belt.Ratio(point),
                new EngineTree(scene, nodes).Torque(point.Loads.Rpm),
                helix.CamRadius(),
                helix.HelixAngle(point),
                Field("drivenClutch.camFrictionDeg", machine.CamFrictionAngle, Angle.Info),
            ]);
    }

    private ExplainedValue DriveGroove(PointLoads point) =>
        Groove("drive", point.Position.DriveRadius, () => belt.DriveRadius(point));

    private ExplainedValue DrivenGroove(PointLoads point) =>
        Groove("driven", point.Position.DrivenRadius, () => belt.DrivenRadius(point));

    private ExplainedValue Groove(string sheave, double radius, Func<ExplainedValue> radiusNode)
    {
        double friction = machine.FrictionAt(radius);
        return nodes.Of(
            $"{sheave}GrooveFriction", BeltThrust.GrooveFriction(friction, machine.GrooveHalfAngle), "",
            Relations.GrooveFriction, () => [Friction(), belt.HalfAngle()]);

        ExplainedValue Friction()
        {
            if (machine.BeltFrictionByRadius is { } curve)
            {
                return nodes.Of(
                    $"{sheave}Friction", friction, "", Relations.FrictionByRadius,
                    () =>
                    [
                        radiusNode(),
                        .. CurveParts.Straight(
                            nodes, "belt.frictionByRadius", curve, curve.From, radius, new("radius", Length.Info),
                            new("friction", null)),
                    ]);
            }

            // A friction that came out of the run is an input here: it is solved with the factors, not from parts.
            return Field(scene.Run is { SolvesFriction: true } ? "anchoring.solvedFriction" : "belt.friction", friction);
        }
    }

    private static double EffectiveTension(PointLoads point) => point.Loads.EngineTorque / point.Position.DriveRadius;
}
