using PartPicker.Mechanics;

namespace PartPicker.Tests.Mechanics;

/// <summary>The machine that docs/model/shift-curve.md gives whole, and what the model makes of it.</summary>
internal sealed class WorkedMachine
{
    private const double RevLimitRpm = 12_000;

    private readonly IReadOnlyDictionary<string, double> given;
    private readonly Drivetrain machine;
    private readonly FlyweightSet flyweights;

    public WorkedMachine(IReadOnlyDictionary<string, double> given)
    {
        this.given = given;
        double fullShift = 0.0245;
        machine = new Drivetrain
        {
            Belt = new BeltPath(given["C"], given["L"], given["Rmin"], given["xc"], given["beta"]),
            Engine = new EngineTorque([(1_000, given["Q"]), (RevLimitRpm, given["Q"])], RevLimitRpm),
            GrooveHalfAngle = given["beta"],
            BeltFriction = given["mu"],
            BeltEfficiency = given["eta"],
            BeltMassPerLength = 0,
            ContactTravel = given["xc"],
            FullShiftTravel = fullShift,
            DriveSpringLength = given["l1"],
            DrivenSpringLength = given["l2"],
            FlyweightFrictionShare = given["f"],
            CamRadius = given["rc"],
            CamTorqueShare = given["q"],
            CamFrictionAngle = given["phi"],
            ThrustForm = DriveThrustForm.TwoArc,
            TyreRadius = given["Rt"],
            FinalDrive = given["u"],
        };
        flyweights = new FlyweightSet(
            (int)given["z"],
            [(given["m"], new SmoothCurve([(0, given["r0"]), (fullShift, given["r0"] + given["slope"] * fullShift)]))]);
    }

    /// <summary>The result of a relation of the machine; a row may give a travel x, and a measured run.</summary>
    public double Of(string relation, IReadOnlyDictionary<string, double> row) => relation switch
    {
        "ratio" => machine.Belt.AtTravel(row["x"]).Ratio,
        "engagement" => Drive(Model(Tied, given["xc"])).Engagement.Rpm,
        "lock-up" => LockUpRpm(),
        "flyweight-factor" => Run(row["measured"], (given["xc"], 9_000)).Flyweight,
        "thrust-left" => ThrustLeft(row),
        "thrust-factor" => Run(row["measured"], (row["x1"], row["n1"]), (row["x2"], row["n2"])).Thrust,
        "driven-clamp" => Upshift(row["x"]).DrivenClamp,
        "drive-thrust" => Upshift(row["x"]).Belt.DriveThrust,
        "balance" => Upshift(row["x"]).Rpm,
        "vehicle-speed" => Upshift(row["x"]).VehicleSpeed,
        _ => throw new ArgumentOutOfRangeException(nameof(relation), relation, "Not worked for a whole machine."),
    };

    private AnchorFactors Tied => new(given["af"], given["ab"]);

    private ShiftModel Model(AnchorFactors factors, params double[] travels) =>
        new(machine, [.. travels.Select(machine.Belt.AtTravel)], 1, factors);

    private DriveSide Drive(ShiftModel model) => model.Drive(
        LinearCurve.Line(given["L01"], 0, -given["k1"], 0, given["L01"]), flyweights);

    private DrivenSide Driven(ShiftModel model) => model.Driven(
        LinearCurve.Line(given["L02"], 0, -given["k2"], 0, given["L02"]), LinearCurve.Line(0, 0, given["kappa"], 0, 10),
        given["psi0"], new HelixCam([(0, given["alpha"])], given["rc"]));

    private ShiftBalance Upshift(double travel)
    {
        ShiftModel model = Model(Tied, travel);
        return model.Balance(Drive(model), Driven(model), 0, ShiftDirection.Upshift)!.Value;
    }

    private double LockUpRpm()
    {
        ShiftModel model = Model(Tied, given["xc"]);
        return model.LockUpRpm(Drive(model))!.Value;
    }

    private AnchorFactors Run(double engagementRpm, params (double Travel, double Rpm)[] points)
    {
        ShiftModel bare = Model(AnchorFactors.None, [.. points.Select(p => p.Travel)]);
        return Anchor.Solve(bare, Drive(bare), Driven(bare), given["f"], engagementRpm, [.. points.Select(p => p.Rpm)]);
    }

    // One point is met exactly: what it has left is what the belt asks there times the factor.
    private double ThrustLeft(IReadOnlyDictionary<string, double> row)
    {
        AnchorFactors factors = Run(row["measured"], (row["x"], row["n"]));
        ShiftModel bare = Model(AnchorFactors.None, row["x"]);
        return factors.Thrust * bare.UpshiftBeltThrust(row["n"], Driven(bare), 0);
    }
}
