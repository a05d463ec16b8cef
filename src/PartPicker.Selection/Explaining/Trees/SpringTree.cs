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
        return Force("springForce", "driveSpring", curve, length, Length, spring.LoadTable, Loads(spring), RateAndFree);

        ExplainedValue Length() => nodes.Of(
            "springLength", length, UnitsNet.Length.Info, Relations.DriveSpringLength,
            () => [Field("driveClutch.springLength", machine.DriveSpringLength, UnitsNet.Length.Info), Shims(), travelNode()]);

        IEnumerable<ExplainedValue> RateAndFree() =>
        [
            spring.Rate is { } stated
                ? nodes.Input("driveSpring.rate", stated.NewtonsPerMeter, ForcePerLength.Info)
                : DrawnRate(
                    Coil.Of("driveSpring", spring.Material, spring.WireDiameter, spring.OutsideDiameter, spring.ActiveCoils),
                    SpringModels.DrawnRate(spring)!.Value.NewtonsPerMeter),
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
            Force(name, "drivenSpring", curve, length, Length, spring.LoadTable, [], RateAndFree);

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
            () => [Twist(point), .. byPoints ? Torques() : [Rate()]]);

        // A spring that is only compressed makes no torque, whatever it could.
        ExplainedValue Rate() => twists ? TwistRate(spring) : nodes.Input("twistRate", 0, RotationalStiffness.Info);

        IEnumerable<ExplainedValue> Torques() => spring.TorqueTable is { } table
            ? CurveParts.Straight(
                nodes, "drivenSpring.torqueTable", curve, table[0].X, twist, new("twist", Angle.Info), new("torque", Torque.Info))
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
        string name, string part, LinearCurve curve, double length, Func<ExplainedValue> lengthNode,
        IReadOnlyList<CurvePoint>? table, ExplainedValue[] loads, Func<IEnumerable<ExplainedValue>> rateAndFree)
    {
        bool byPoints = table is not null || loads.Length > 0;
        return nodes.Of(
            name, curve.At(length), UnitsNet.Force.Info, byPoints ? Relations.SpringBetweenLoads : Relations.SpringForce,
            () => [lengthNode(), .. byPoints ? Points() : rateAndFree()]);

        IEnumerable<ExplainedValue> Points() => table is null
            ? loads
            : CurveParts.Straight(
                nodes, $"{part}.loadTable", curve, table[0].X, length, new("length", Length.Info), new("load", UnitsNet.Force.Info));
    }

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
            _ => DrawnRate(CoilOf(spring), rate),
        };
    }

    private ExplainedValue TwistRate(DrivenSpring spring)
    {
        double rate = SpringModels.TwistRate(spring)!.Value;
        if (spring.TwistRate is not null)
            return nodes.Input("drivenSpring.twistRate", rate, RotationalStiffness.Info);
        Coil coil = CoilOf(spring);
        return nodes.Of(
            "drivenSpring.twistRate", rate, RotationalStiffness.Info, Relations.TwistRate,
            () => [Modulus(coil, "elasticModulus", coil.Material.ElasticModulus(coil.Wire), Relations.ElasticModulus), .. Drawn(coil)]);
    }

    private ExplainedValue DrawnRate(Coil coil, double rate) => nodes.Of(
        $"{coil.Part}.rate", rate, ForcePerLength.Info, Relations.SpringRate,
        () => [Modulus(coil, "shearModulus", coil.Material.ShearModulus(coil.Wire), Relations.ShearModulus), .. Drawn(coil)]);

    private ExplainedValue Modulus(Coil coil, string name, Pressure modulus, Relation relation) => nodes.Of(
        $"{coil.Part}.{name}", modulus.Pascals, Pressure.Info, relation, () => [Wire(coil)]);

    private IEnumerable<ExplainedValue> Drawn(Coil coil) =>
    [
        Wire(coil),
        nodes.Of(
            $"{coil.Part}.meanDiameter", SpringModels.Mean(coil.Outside, coil.Wire).Meters, Length.Info, Relations.MeanDiameter,
            () => [nodes.Input($"{coil.Part}.outsideDiameter", coil.Outside.Meters, Length.Info), Wire(coil)]),
        nodes.Input($"{coil.Part}.activeCoils", coil.ActiveCoils),
    ];

    private ExplainedValue Wire(Coil coil) => nodes.Input($"{coil.Part}.wireDiameter", coil.Wire.Meters, Length.Info);

    private static Coil CoilOf(DrivenSpring spring) =>
        Coil.Of("drivenSpring", spring.Material, spring.WireDiameter, spring.OutsideDiameter, spring.ActiveCoils);

    /// <summary>A spring that is known by its geometry.</summary>
    private sealed record Coil(string Part, WireMaterial Material, Length Wire, Length Outside, double ActiveCoils)
    {
        public static Coil Of(string part, string? material, Length? wire, Length? outside, double? activeCoils) =>
            new(part, WireMaterial.Find(material!)!, wire!.Value, outside!.Value, activeCoils!.Value);
    }
}
