using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;

namespace PartPicker.Tests.Mechanics;

/// <summary>What the model makes of the numbers that a worked example of docs/model gives.</summary>
internal static class WorkedExamples
{
    private static readonly Dictionary<string, Func<IReadOnlyDictionary<string, double>, double>> OfRelation = new()
    {
        ["spring-force"] = v => LinearCurve.Line(v["L0"], 0, -v["k"], 0, v["L0"]).At(v["l"]),
        ["spring-between-loads"] = v => LinearCurve.Table([(v["la"], v["Fa"]), (v["lb"], v["Fb"])]).At(v["l"]),
        ["rate-of-one-load"] = v => SpringModels.AxialRate(new DrivenSpring
        {
            Id = "spring", FreeLength = M(v["L0"]), LoadLength = M(v["la"]), Load = Force.FromNewtons(v["Fa"]),
        })!.Value,
        ["spring-rate"] = v => HelicalSpring.Rate(Pressure.FromPascals(v["G"]), M(v["d"]), M(v["D"]), v["Na"]).NewtonsPerMeter,
        ["twist-rate"] = v =>
            TorsionSpring.TwistRate(Pressure.FromPascals(v["E"]), M(v["d"]), M(v["D"]), v["Na"]).NewtonMetersPerRadian,
        ["thrust-per-speed-squared"] = v => Flyweights(v).ThrustPerSpeedSquared(0),
        ["flyweight-thrust"] = v => v["af"] * Flyweights(v).Thrust(0, Rotation.ToRadiansPerSecond(v["n"])),
        ["radius-curve"] = v => FourPoints(v, "x", "r").At(v["x"]),
        ["radius-slope"] = v => FourPoints(v, "x", "r").Slope(v["x"]),
        ["engagement"] = v => Engagement.Of(
            LinearCurve.Line(0, v["F1"], 0, 0, 1), 0.5, Flyweights(v), PathEnd, v["f"], v["af"]).Rpm,
        ["grip-thrust"] = v => new BeltThrust(v["beta"], v["mu"], 3, 3).SlipEdge(v["D"]),
        ["drive-radius"] = v => Belt(v).AtTravel(v["x"]).DriveRadius,
        ["open-belt-length"] = v => Belt(v).AtTravel(v["x"]).DrivenRadius,
        ["drive-wrap"] = v => Belt(v).AtTravel(v["x"]).DriveWrap,
        ["driven-wrap"] = v => Belt(v).AtTravel(v["x"]).DrivenWrap,
        ["opening-travel"] = v => Belt(v).AtTravel(v["x"]).OpeningTravel,
        ["ratio"] = v => Belt(v).AtTravel(v["x"]).Ratio,
        ["travel-at-ratio"] = v => Belt(v).AtRatio(v["i"]).Travel,
        ["cam-force"] = v => HelixCam.Thrust(
            Torque.FromNewtonMeters(v["T"]), M(v["rc"]), Angle.FromRadians(v["alpha"]), Angle.FromRadians(-v["phi"])).Newtons,
        ["stiffened-force"] = v => v["F"] * HelicalSpring.TwistStiffening(v["theta"] / (2 * Math.PI), v["Na"]),
        ["torque-between-twists"] = v => LinearCurve.Table([(v["thetaa"], v["taua"]), (v["thetab"], v["taub"])]).At(v["theta"]),
        ["helix-angle"] = v => Cam(v).Angle(v["y"]),
        ["cam-turn"] = v => Cam(v).Turn(v["y"]),
        ["groove-friction"] = v => BeltThrust.GrooveFriction(v["mu"], v["beta"]),
        ["belt-tension"] = v => Load(v, slips: false).SlackNet,
        ["slipping-tension"] = v => Load(v, slips: true).SlackNet,
        ["tight-tension"] = v => Load(v, slips: false).TightNet,
        ["active-arc"] = v => Load(v, slips: false).DriveActiveArc,
        ["drive-thrust"] = v => Load(v, slips: false).DriveThrust,
        ["locked-thrust"] = v => Load(v, slips: false, DriveThrustForm.Locked).DriveThrust,
        ["slip-margin"] = v => Load(v, slips: false).SlipMargin,
        ["slipping-margin"] = v => Load(v, slips: true).SlipMargin,
        ["torque-curve"] = v => new EngineTorque(
            Enumerable.Range(1, 4).Select(k => (v[$"n{k}"], v[$"Q{k}"])), v["n4"]).At(v["n"]),
        ["two-peaks"] = v => new TwoPeaks(v["nT"], v["QM"], v["nP"], v["P"]).At(v["n"]),
        ["standard-pressure"] = v => Atmosphere.PressureAt(M(v["H"])).Pascals,
        ["standard-temperature"] = v => Atmosphere.StandardTemperature(M(v["H"])).Kelvins,
        ["correction-sae-j1349"] = v => Correction(AirCorrection.SaeJ1349, v),
        ["correction-iso-1585"] = v => Correction(AirCorrection.Iso1585, v),
        ["torque-factor"] = v =>
            Atmosphere.TorqueFactor(AirCorrection.SaeJ1349, M(v["H"]), Temperature.FromKelvins(v["T"])),
        ["boosted-torque-factor"] = v => Atmosphere.BoostedTorqueFactor(
            AirCorrection.SaeJ1349, M(v["H"]), Temperature.FromKelvins(v["T"]), M(v["Hb"])),
        ["saturation-pressure"] = v => Atmosphere.SaturationPressure(Temperature.FromKelvins(v["T"])).Pascals,
        ["dry-pressure"] = v =>
            Atmosphere.DryPressure(Pressure.FromPascals(v["p"]), Temperature.FromKelvins(v["T"]), v["h"]).Pascals,
        ["moist-torque-factor"] = v =>
            Atmosphere.TorqueFactor(AirCorrection.SaeJ1349, M(v["H"]), Temperature.FromKelvins(v["T"]), v["h"]),
        ["band"] = v => Response.Of(
            [
                new UncertainInput("first", t => new Deviation { Friction = t * v["a1"] }, _ => Deviation.None),
                new UncertainInput("second", t => new Deviation { TorqueShare = t * v["a2"] }, _ => Deviation.None),
            ],
            (set, _) => [7_000 + v["c1"] * set.Friction + v["c2"] * set.TorqueShare]).HalfWidths[0]!.Value,
        ["load-tolerance"] = v =>
            SpringTolerance.Load(M(v["d"]), M(v["D"]), v["Na"], Force.FromNewtons(v["F"]), (int)v["grade"]).Newtons,
        ["free-length-tolerance"] = v => SpringTolerance.FreeLength(
            M(v["d"]), M(v["D"]), v["Na"], ForcePerLength.FromNewtonsPerMeter(v["k"]), (int)v["grade"]).Meters,
        ["torque-tolerance"] = v =>
            SpringTolerance.TorqueOfGradeTwo(M(v["d"]), M(v["D"]), v["Na"], stainless: false).NewtonMeters,
    };

    /// <summary>The result of a relation by itself.</summary>
    public static double Of(string relation, IReadOnlyDictionary<string, double> given) => OfRelation[relation](given);

    private const double PathEnd = 0.01;

    private static Length M(double metres) => Length.FromMeters(metres);

    private static FlyweightSet Flyweights(IReadOnlyDictionary<string, double> v) => new(
        (int)v["z"], [(v["m"], new SmoothCurve([(0, v["r"]), (PathEnd, v["r"] + v["slope"] * PathEnd)]))]);

    private static SmoothCurve FourPoints(IReadOnlyDictionary<string, double> v, string x, string y) =>
        new(Enumerable.Range(1, 4).Select(k => (v[$"{x}{k}"], v[$"{y}{k}"])));

    private static BeltPath Belt(IReadOnlyDictionary<string, double> v) => new(v["C"], v["L"], v["Rmin"], v["xc"], v["beta"]);

    private static HelixCam Cam(IReadOnlyDictionary<string, double> v) => new([(0, v["alpha0"]), (v["y1"], v["alpha1"])], v["rc"]);

    private static double Correction(AirCorrection law, IReadOnlyDictionary<string, double> v) =>
        Atmosphere.Correction(law, Pressure.FromPascals(v["p"]), Temperature.FromKelvins(v["T"]));

    private static BeltLoad Load(
        IReadOnlyDictionary<string, double> v, bool slips, DriveThrustForm form = DriveThrustForm.TwoArc)
    {
        BeltLoad load = new BeltThrust(v["beta"], v["mu"], v["theta1"], v["theta2"], form).Load(v["Fs"], v["D"]);
        return load.DrivenSlips == slips
            ? load
            : throw new InvalidOperationException($"The belt {(slips ? "does not slip" : "slips")} on the driven sheave.");
    }
}
