using System.Text.Json;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.Tests.Mechanics;
using UnitsNet;

namespace PartPicker.Tests.Selection;

/// <summary>An agreement case as a keeper would put it into a catalog: nouns, angles in degrees, holes by name.</summary>
internal sealed class AgreementNouns
{
    private static readonly JsonElement Root =
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "data", "agreement-cases.json"))).RootElement;

    private readonly JsonElement machine;
    private readonly JsonElement conditions;
    private readonly JsonElement expected;

    private AgreementNouns(JsonElement element)
    {
        machine = Root.GetProperty("machines").GetProperty(element.GetProperty("machine").GetString()!);
        conditions = element.GetProperty("conditions");
        expected = element.GetProperty("expected");
        JsonElement parts = element.GetProperty("parts");
        Flyweight flyweight = Flyweight(parts.GetProperty("flyweight"), out Dictionary<StationName, double> masses);
        var set = new PartSet("drive-spring", "flyweight", masses, "driven-spring", "hole", "helix");
        var air = new AirState(
            Given("altitude")?.GetDouble() ?? 0, Given("temperature")?.GetDouble());
        Baseline? run = expected.TryGetProperty("baseline", out JsonElement measured)
            ? new Baseline(
                set,
                Number(measured, "engagement_rpm"),
                [.. Points(measured.GetProperty("shift")).Select(p => new RatioRpm(p.X, p.Y))],
                FlatShiftRpm: null,
                air)
            : null;
        Snapshot = new CatalogSnapshot("agreement", new CatalogContents(
            [
                MachineItem(set), Engine(), DriveClutch(), DrivenClutch(Number(parts, "hole")), Belt(), Gearing(),
                DriveSpring(parts.GetProperty("drive_spring")), flyweight, DrivenSpring(parts.GetProperty("driven_spring")),
                Helix(Points(parts.GetProperty("helix").GetProperty("points"))),
            ],
            []));
        Request = new PredictionRequest
        {
            Machine = Snapshot.FindMachine("machine")!,
            Baseline = run,
            Air = air,
            AirLaw = Given("air_law")?.GetString() == "ISO1585" ? AirLaw.Iso1585 : AirLaw.SaeJ1349,
        };
    }

    public CatalogSnapshot Snapshot { get; }

    public PredictionRequest Request { get; }

    public static AgreementNouns Of(string id) =>
        new(Root.GetProperty("cases").EnumerateArray().Single(e => e.GetProperty("id").GetString() == id));

    private Machine MachineItem(PartSet fitted) => new()
    {
        Id = "machine",
        EngineId = "engine",
        DriveClutchId = "drive-clutch",
        DrivenClutchId = "driven-clutch",
        BeltId = "belt",
        GearingId = "gearing",
        CentreDistance = Metres(machine, "centre_distance"),
        Fitted = fitted,
    };

    private Engine Engine() => new()
    {
        Id = "engine",
        IdleRpm = Number(machine, "idle"),
        RevLimitRpm = expected.TryGetProperty("rev_limit_used", out JsonElement limit) ? limit.GetDouble() : Number(machine, "rev_limit"),
        TorqueCurve = Points(expected.TryGetProperty("engine_torque_used", out JsonElement used) ? used : machine.GetProperty("engine_torque")),
    };

    private DriveClutch DriveClutch() => new()
    {
        Id = "drive-clutch",
        SheaveHalfAngleDeg = Degrees(Number(machine, "beta")),
        ContactTravel = Metres(machine, "x_c"),
        FullShiftTravel = Metres(machine, "x_f"),
        ContactPitchRadius = Metres(machine, "R1min"),
        ArmCount = machine.GetProperty("arms").GetInt32(),
        SpringLength = Metres(machine, "drive_spring_length"),
        FlyweightFrictionShare = Given("friction_share")?.GetDouble() ?? Number(machine, "friction_share"),
        ThrustLaw = (Given("thrust_law") ?? machine.GetProperty("thrust_law")).GetString() == "locked" ? DriveThrustLaw.Locked : DriveThrustLaw.TwoArc,
    };

    private DrivenClutch DrivenClutch(double twist) => new()
    {
        Id = "driven-clutch",
        CamRadius = Metres(machine, "cam_radius"),
        CamTorqueShare = Number(machine, "share"),
        SpringLength = Metres(machine, "driven_spring_length"),
        CamFrictionDeg = Degrees(Given("cam_friction_angle")?.GetDouble() ?? Number(machine, "cam_friction_angle")),
        Holes = [new("hole", Degrees(twist))],
    };

    private Belt Belt() => new()
    {
        Id = "belt",
        PitchLength = Metres(machine, "belt_length"),
        MassPerLength = LinearDensity.FromKilogramsPerMeter(Number(machine, "belt_mass")),
        Friction = Number(machine, "mu"),
        Efficiency = Number(machine, "eta"),
    };

    private Gearing Gearing() => new()
    {
        Id = "gearing",
        TyreRadius = Metres(machine, "tyre_radius"),
        FinalDrive = Number(machine, "final_drive"),
    };

    private static DriveSpring DriveSpring(JsonElement spring)
    {
        var named = new DriveSpring { Id = "drive-spring" };
        if (spring.TryGetProperty("table", out JsonElement table))
            return named with { LoadTable = [.. Points(table).OrderBy(p => p.X)] };
        if (!spring.TryGetProperty("loads", out JsonElement loads))
            return named with { FreeLength = Metres(spring, "free"), Rate = ForcePerLength.FromNewtonsPerMeter(Number(spring, "k")) };
        CurvePoint[] two = Points(loads);
        return named with
        {
            FirstLength = Length.FromMeters(two[0].X),
            FirstLoad = Force.FromNewtons(two[0].Y),
            SecondLength = Length.FromMeters(two[1].X),
            SecondLoad = Force.FromNewtons(two[1].Y),
        };
    }

    private static DrivenSpring DrivenSpring(JsonElement spring)
    {
        var named = new DrivenSpring
        {
            Id = "driven-spring",
            TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(Number(spring, "kappa")),
        };
        return spring.TryGetProperty("table", out JsonElement table)
            ? named with { LoadTable = [.. Points(table).OrderBy(p => p.X)] }
            : named with { FreeLength = Metres(spring, "free"), Rate = ForcePerLength.FromNewtonsPerMeter(Number(spring, "k")) };
    }

    private static Helix Helix(CurvePoint[] points) => points is [var only]
        ? new Helix { Id = "helix", HelixDeg = Degrees(only.Y) }
        : new Helix { Id = "helix", AnglePoints = points };

    private static Flyweight Flyweight(JsonElement body, out Dictionary<StationName, double> masses)
    {
        var flyweight = new Flyweight
        {
            Id = "flyweight",
            BodyMass = Mass.FromKilograms(Number(body, "mass")),
            RadiusCurve = Points(body.GetProperty("radius")),
        };
        masses = [];
        foreach (JsonElement station in body.GetProperty("stations").EnumerateArray())
        {
            CurvePoint[] curve = Points(station.GetProperty("radius"));
            double[] mass = [Number(station, "mass")];
            StationName name = Enum.Parse<StationName>(station.GetProperty("name").GetString()!, ignoreCase: true);
            masses[name] = mass[0];
            flyweight = name switch
            {
                StationName.Heel => flyweight with { HeelCurve = curve, HeelMasses = mass },
                StationName.Middle => flyweight with { MiddleCurve = curve, MiddleMasses = mass },
                _ => flyweight with { TipCurve = curve, TipMasses = mass },
            };
        }

        return flyweight;
    }

    private JsonElement? Given(string name) => conditions.TryGetProperty(name, out JsonElement value) ? value : null;

    private static double Number(JsonElement element, string name) => AgreementCase.Number(element, name);

    private static Length Metres(JsonElement element, string name) => Length.FromMeters(Number(element, name));

    private static double Degrees(double radians) => radians * 180 / Math.PI;

    private static CurvePoint[] Points(JsonElement array) =>
        [.. array.EnumerateArray().Select(p => new CurvePoint(p[0].GetDouble(), p[1].GetDouble()))];
}
