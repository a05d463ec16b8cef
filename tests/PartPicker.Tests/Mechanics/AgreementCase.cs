using System.Text.Json;
using PartPicker.Mechanics;
using UnitsNet;

namespace PartPicker.Tests.Mechanics;

/// <summary>
/// One case of tests/data/agreement-cases.json: numbers of an independent implementation in another language,
/// itself checked against the capstan equation integrated, kinetic energy differentiated and belt closure.
/// </summary>
public sealed class AgreementCase
{
    private static readonly JsonElement Root = Load();
    private readonly JsonElement machine;
    private readonly JsonElement conditions;
    private readonly JsonElement parts;

    private AgreementCase(JsonElement element)
    {
        Id = element.GetProperty("id").GetString()!;
        machine = Root.GetProperty("machines").GetProperty(element.GetProperty("machine").GetString()!);
        conditions = element.TryGetProperty("conditions", out JsonElement given) ? given : default;
        parts = element.GetProperty("parts");
        Expected = element.GetProperty("expected");
    }

    public string Id { get; }

    public JsonElement Expected { get; }

    public static IEnumerable<AgreementCase> All =>
        Root.GetProperty("cases").EnumerateArray().Select(e => new AgreementCase(e));

    public static AgreementCase Of(string id) => All.Single(c => c.Id == id);

    public double FrictionShare => Condition("friction_share") ?? Number(machine, "friction_share");

    public double TorqueFactor => Atmosphere.TorqueFactor(
        Word("air_law") == "ISO1585" ? AirCorrection.Iso1585 : AirCorrection.SaeJ1349,
        Length.FromMeters(Condition("altitude") ?? 0),
        Condition("temperature") is { } kelvin ? Temperature.FromKelvins(kelvin) : null);

    public AnchorFactors Anchor => Given("anchor") is { } pair
        ? new AnchorFactors(pair[0].GetDouble(), pair[1].GetDouble())
        : AnchorFactors.None;

    public Drivetrain Drivetrain()
    {
        double contact = Number(machine, "x_c");
        double halfAngle = Number(machine, "beta");
        JsonElement torque = Expected.TryGetProperty("engine_torque_used", out JsonElement used)
            ? used
            : machine.GetProperty("engine_torque");
        double limit = Expected.TryGetProperty("rev_limit_used", out JsonElement usedLimit)
            ? usedLimit.GetDouble()
            : Number(machine, "rev_limit");
        return new Drivetrain
        {
            Belt = new BeltPath(
                Number(machine, "centre_distance"), Number(machine, "belt_length"), Number(machine, "R1min"), contact, halfAngle),
            Engine = new EngineTorque(Points(torque), limit),
            GrooveHalfAngle = halfAngle,
            BeltFriction = Number(machine, "mu"),
            BeltEfficiency = Number(machine, "eta"),
            BeltMassPerLength = Number(machine, "belt_mass"),
            ContactTravel = contact,
            FullShiftTravel = Number(machine, "x_f"),
            DriveSpringLength = Number(machine, "drive_spring_length"),
            DrivenSpringLength = Number(machine, "driven_spring_length"),
            FlyweightFrictionShare = FrictionShare,
            CamRadius = Number(machine, "cam_radius"),
            CamTorqueShare = Number(machine, "share"),
            CamFrictionAngle = Condition("cam_friction_angle") ?? Number(machine, "cam_friction_angle"),
            ThrustForm = (Word("thrust_law") ?? machine.GetProperty("thrust_law").GetString()) == "locked"
                ? DriveThrustForm.Locked
                : DriveThrustForm.TwoArc,
            TyreRadius = Number(machine, "tyre_radius"),
            FinalDrive = Number(machine, "final_drive"),
        };
    }

    public LinearCurve DriveSpring() => Compression(parts.GetProperty("drive_spring"));

    public FlyweightSet Flyweights()
    {
        JsonElement flyweight = parts.GetProperty("flyweight");
        return new FlyweightSet(
            machine.GetProperty("arms").GetInt32(),
            flyweight.GetProperty("stations").EnumerateArray().Prepend(flyweight)
                .Select(e => (Number(e, "mass"), new SmoothCurve(Points(e.GetProperty("radius"))))));
    }

    public LinearCurve DrivenAxial() => Compression(parts.GetProperty("driven_spring"));

    public LinearCurve DrivenTwist() =>
        LinearCurve.Line(0, 0, Number(parts.GetProperty("driven_spring"), "kappa"), 0, 20);

    public double PreloadTwist => Number(parts, "hole");

    public HelixCam Helix() =>
        new(Points(parts.GetProperty("helix").GetProperty("points")), Number(machine, "cam_radius"));

    public static double Number(JsonElement element, string name) => element.GetProperty(name).GetDouble();

    private static LinearCurve Compression(JsonElement spring)
    {
        if (spring.TryGetProperty("table", out JsonElement table))
            return LinearCurve.Table(Points(table).OrderBy(p => p.X));
        if (spring.TryGetProperty("loads", out JsonElement loads))
        {
            (double X, double Y)[] two = [.. Points(loads)];
            return LinearCurve.Through(two[0], two[1], 0.01, 0.2);
        }

        return LinearCurve.Line(Number(spring, "free"), 0, -Number(spring, "k"), 0.01, 0.2);
    }

    private static IEnumerable<(double X, double Y)> Points(JsonElement array) =>
        array.EnumerateArray().Select(p => (p[0].GetDouble(), p[1].GetDouble()));

    private JsonElement? Given(string name) =>
        conditions.ValueKind == JsonValueKind.Object && conditions.TryGetProperty(name, out JsonElement value)
            ? value
            : null;

    private double? Condition(string name) => Given(name)?.GetDouble();

    private string? Word(string name) => Given(name)?.GetString();

    private static JsonElement Load()
    {
        string path = Path.Combine(AppContext.BaseDirectory, "data", "agreement-cases.json");
        return JsonDocument.Parse(File.ReadAllText(path)).RootElement;
    }
}
