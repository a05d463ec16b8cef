using PartPicker.Mechanics;
using PartPicker.Parts;
using UnitsNet;
using static PartPicker.Selection.TreeNodes;

namespace PartPicker.Selection;

/// <summary>Takes forces and torques of the springs apart, whichever way a spring is known.</summary>
internal sealed class SpringTree(Scene scene, TreeNodes nodes)
{
    private readonly Drivetrain machine = scene.Drivetrain;
    private readonly BeltTree belt = new(scene, nodes);

    /// <summary>F₁ at a travel of the drive sheave (m).</summary>
    public ExplainedValue Drive(double travel, Func<ExplainedValue> travelNode)
    {
        DriveSpring spring = scene.Set.DriveSpring;
        double length = machine.DriveSpringLength - scene.Set.Spring.ShimThickness - travel;
        LinearCurve curve = Predictor.DriveForce(scene.Machine, scene.Set.Spring);
        return Force("springForce", "driveSpring", curve, length, Length, spring.LoadTable is not null, Loads(spring), RateAndFree);

        ExplainedValue Length() => nodes.Of(
            "springLength", length, UnitsNet.Length.Info, Relations.DriveSpringLength,
            () => [Field("driveClutch.springLength", machine.DriveSpringLength, UnitsNet.Length.Info), Shims(), travelNode()]);

        IEnumerable<ExplainedValue> RateAndFree() =>
        [
            spring.Rate is { } stated
                ? nodes.Input("driveSpring.rate", stated.NewtonsPerMeter, ForcePerLength.Info)
                : DrawnRate("driveSpring", SpringModels.DrawnRate(spring)!.Value, spring.Material, spring.WireDiameter, spring.OutsideDiameter, spring.ActiveCoils),
            nodes.Input("driveSpring.freeLength", spring.FreeLength!.Value.Meters, UnitsNet.Length.Info),
        ];
    }

    /// <summary>F₂ at a point of the curve.</summary>
    public ExplainedValue Driven(PointLoads point)
    {
        DrivenSpring spring = scene.Set.Driven.Spring;
        double length = machine.DrivenSpringLength - point.Position.OpeningTravel;
        LinearCurve curve = Predictor.DrivenForce(scene.Machine, spring);
        if (Predictor.StiffeningCoils(scene.Machine, scene.Set.Driven) is not { } coils)
            return AtRest("drivenSpringForce");
        double stiffening = HelicalSpring.TwistStiffening(TwistAt(point) / (2 * Math.PI), coils);
        return nodes.Of(
            "drivenSpringForce", stiffening * curve.At(length), UnitsNet.Force.Info, Relations.StiffenedForce,
            () => [Twist(point), nodes.Input("drivenSpring.activeCoils", coils), AtRest("forceWithoutTwist")]);

        ExplainedValue AtRest(string name) =>
            Force(name, "drivenSpring", curve, length, Length, spring.LoadTable is not null, [], RateAndFree);

        ExplainedValue Length() => nodes.Of(
            "drivenSpringLength", length, UnitsNet.Length.Info, Relations.DrivenSpringLength,
            () => [Field("drivenClutch.springLength", machine.DrivenSpringLength, UnitsNet.Length.Info), belt.OpeningTravel(point)]);

        IEnumerable<ExplainedValue> RateAndFree() =>
            [AxialRate(spring), nodes.Input("drivenSpring.freeLength", spring.FreeLength!.Value.Meters, UnitsNet.Length.Info)];
    }

    /// <summary>τ at a point of the curve.</summary>
    public ExplainedValue TwistTorque(PointLoads point)
    {
        DrivenSpring spring = scene.Set.Driven.Spring;
        bool twists = scene.Machine.Profile.DrivenClutch.Family == DrivenFamily.TorsionAndHelix;
        LinearCurve curve = Predictor.DrivenTwist(
            scene.Machine, scene.Set.Driven, HelixRules.Cam(scene.Set.Driven.Helix, scene.Machine));
        double twist = TwistAt(point);
        bool byPoints = twists && (spring.TorqueTable is not null || spring.KnownByTwoTorques);
        return nodes.Of(
            "twistTorque", curve.At(twist), Torque.Info,
            byPoints ? Relations.TorqueBetweenTwists : Relations.TwistTorque,
            () => [Twist(point), .. byPoints ? Torques() : [twists ? TwistRate(spring) : nodes.Input("twistRate", 0, RotationalStiffness.Info)]]);

        IEnumerable<ExplainedValue> Torques() => spring.TorqueTable is not null
            ? CurveParts.Straight(
                nodes, "drivenSpring.torqueTable", curve, twist, new("twist", Angle.Info), new("torque", Torque.Info))
            :
            [
                nodes.Input("drivenSpring.firstTwistDeg", Angle.FromDegrees(spring.FirstTwistDeg!.Value).Radians, Angle.Info),
                nodes.Input("drivenSpring.firstTorque", spring.FirstTorque!.Value.NewtonMeters, Torque.Info),
                nodes.Input("drivenSpring.secondTwistDeg", Angle.FromDegrees(spring.SecondTwistDeg!.Value).Radians, Angle.Info),
                nodes.Input("drivenSpring.secondTorque", spring.SecondTorque!.Value.NewtonMeters, Torque.Info),
            ];
    }

    private double TwistAt(PointLoads point) => scene.Set.Driven.PreloadTwist + scene.Driven.CamTurn[point.J];

    private ExplainedValue Twist(PointLoads point)
    {
        DrivenChoice driven = scene.Set.Driven;
        return nodes.Of(
            "twist", TwistAt(point), Angle.Info, Relations.Twist,
            () =>
            [
                nodes.Of(
                    "preloadTwist", driven.PreloadTwist, Angle.Info, Relations.PreloadTwist,
                    () =>
                    [
                        nodes.Input($"hole/{driven.Hole.Name}.twist", Angle.FromDegrees(driven.Hole.TwistDeg).Radians, Angle.Info),
                        nodes.Input("drivenSpring.legOffsetDeg", Angle.FromDegrees(driven.Spring.LegOffsetDeg ?? 0).Radians, Angle.Info),
                    ]),
                new HelixTree(scene, nodes).CamTurn(point),
            ]);
    }

    private ExplainedValue Shims()
    {
        SpringChoice choice = scene.Set.Spring;
        return choice is { Shim: { } shim, Count: > 0 }
            ? nodes.Of(
                "shimThickness", choice.ShimThickness, Length.Info, Relations.ShimStack,
                () => [nodes.Input("shims.count", choice.Count), nodes.Input("shim.thickness", shim.Thickness.Meters, Length.Info)])
            : nodes.Input("shimThickness", 0, Length.Info);
    }

    private ExplainedValue Force(
        string name, string part, LinearCurve curve, double length, Func<ExplainedValue> lengthNode, bool byTable,
        ExplainedValue[] loads, Func<IEnumerable<ExplainedValue>> rateAndFree) => nodes.Of(
            name, curve.At(length), UnitsNet.Force.Info,
            byTable || loads.Length > 0 ? Relations.SpringBetweenLoads : Relations.SpringForce,
            () =>
            [
                lengthNode(),
                .. byTable
                    ? CurveParts.Straight(
                        nodes, $"{part}.loadTable", curve, length, new("length", Length.Info), new("load", UnitsNet.Force.Info))
                    : loads.Length > 0 ? loads : rateAndFree(),
            ]);

    private ExplainedValue[] Loads(DriveSpring spring) => spring.KnownByTwoLoads
        ?
        [
            nodes.Input("driveSpring.firstLength", spring.FirstLength!.Value.Meters, Length.Info),
            nodes.Input("driveSpring.firstLoad", spring.FirstLoad!.Value.Newtons, UnitsNet.Force.Info),
            nodes.Input("driveSpring.secondLength", spring.SecondLength!.Value.Meters, Length.Info),
            nodes.Input("driveSpring.secondLoad", spring.SecondLoad!.Value.Newtons, UnitsNet.Force.Info),
        ]
        : [];

    private ExplainedValue AxialRate(DrivenSpring spring)
    {
        double rate = SpringModels.AxialRate(spring)!.Value;
        return spring switch
        {
            { Load: { } load, LoadLength: { } at, FreeLength: { } free } when at < free => nodes.Of(
                "drivenSpring.rate", rate, ForcePerLength.Info, Relations.RateOfOneLoad,
                () =>
                [
                    nodes.Input("drivenSpring.load", load.Newtons, UnitsNet.Force.Info),
                    nodes.Input("drivenSpring.freeLength", free.Meters, Length.Info),
                    nodes.Input("drivenSpring.loadLength", at.Meters, Length.Info),
                ]),
            { Rate: not null } => nodes.Input("drivenSpring.rate", rate, ForcePerLength.Info),
            _ => DrawnRate(
                "drivenSpring", ForcePerLength.FromNewtonsPerMeter(rate), spring.Material, spring.WireDiameter, spring.OutsideDiameter, spring.ActiveCoils),
        };
    }

    private ExplainedValue TwistRate(DrivenSpring spring)
    {
        double rate = SpringModels.TwistRate(spring)!.Value;
        if (spring.TwistRate is not null)
            return nodes.Input("drivenSpring.twistRate", rate, RotationalStiffness.Info);
        Length wire = spring.WireDiameter!.Value;
        Pressure modulus = WireMaterial.Find(spring.Material!)!.ElasticModulus(wire);
        return nodes.Of(
            "drivenSpring.twistRate", rate, RotationalStiffness.Info, Relations.TwistRate,
            () =>
            [
                nodes.Of(
                    "elasticModulus", modulus.Pascals, Pressure.Info, Relations.ElasticModulus, () => [Wire("drivenSpring", wire)]),
                Wire("drivenSpring", wire),
                MeanDiameter("drivenSpring", wire, spring.OutsideDiameter!.Value),
                nodes.Input("drivenSpring.activeCoils", spring.ActiveCoils!.Value),
            ]);
    }

    private ExplainedValue DrawnRate(
        string part, ForcePerLength rate, string? material, Length? wireDiameter, Length? outsideDiameter, double? activeCoils)
    {
        Length wire = wireDiameter!.Value;
        Pressure modulus = WireMaterial.Find(material!)!.ShearModulus(wire);
        return nodes.Of(
            $"{part}.rate", rate.NewtonsPerMeter, ForcePerLength.Info, Relations.SpringRate,
            () =>
            [
                nodes.Of($"{part}.shearModulus", modulus.Pascals, Pressure.Info, Relations.ShearModulus, () => [Wire(part, wire)]),
                Wire(part, wire),
                MeanDiameter(part, wire, outsideDiameter!.Value),
                nodes.Input($"{part}.activeCoils", activeCoils!.Value),
            ]);
    }

    private ExplainedValue Wire(string part, Length wire) => nodes.Input($"{part}.wireDiameter", wire.Meters, Length.Info);

    private ExplainedValue MeanDiameter(string part, Length wire, Length outside) => nodes.Of(
        $"{part}.meanDiameter", SpringModels.Mean(outside, wire).Meters, Length.Info, Relations.MeanDiameter,
        () => [nodes.Input($"{part}.outsideDiameter", outside.Meters, Length.Info), Wire(part, wire)]);
}
