using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>A flyweight body with one mass in each of its stations, on one step of its ramp where it has any: one candidate.</summary>
internal sealed record FlyweightChoice(
    Flyweight Body, IReadOnlyDictionary<StationName, double> Masses, string? AdjusterStep = null)
{
    /// <summary>How many choices of ramp step and masses a body has.</summary>
    public static long CountOf(Flyweight body) => body.Stations().Aggregate(
        (long)(body.AdjusterCurves?.Count ?? 1), (count, station) => count * MassesOf(station).Length);

    /// <summary>Every choice of a body: by ramp step as listed, then lightest first in each station, pin and heel before tip.</summary>
    public static IEnumerable<FlyweightChoice> AllOf(Flyweight body)
    {
        IEnumerable<Dictionary<StationName, double>> choices = [[]];
        foreach (MassStation station in body.Stations())
        {
            double[] masses = MassesOf(station);
            choices = choices.SelectMany(
                _ => masses, (chosen, mass) => new Dictionary<StationName, double>(chosen) { [station.Name] = mass });
        }

        IEnumerable<string?> steps = body.AdjusterCurves is { } curves ? curves.Select(c => (string?)c.Name) : [null];
        return from step in steps from masses in choices select new FlyweightChoice(body, masses, step);
    }

    /// <summary>
    /// Every radius curve of a body over travel up to full shift, with the words that name it: its path, or the path
    /// of each ramp step, then its stations.
    /// </summary>
    /// <remarks>An end that falls short of rest or of full shift by less than the tolerance is set there.</remarks>
    public static IEnumerable<(string Name, SmoothCurve Curve)> Curves(Flyweight body, double fullShiftTravel) =>
        Points(body).Select(c => (c.Name, Smooth(c.Points, fullShiftTravel)));

    /// <summary>The points behind <see cref="Curves"/>.</summary>
    public static IEnumerable<(string Name, IReadOnlyList<CurvePoint> Points)> Points(Flyweight body)
    {
        foreach (NamedCurve step in body.AdjusterCurves ?? [])
            yield return ($"ramp step {step.Name}", step.Points);
        if (body.AdjusterCurves is null && body.RadiusCurve.Count > 0)
            yield return ("body", body.RadiusCurve);
        foreach (MassStation station in body.Stations().Where(s => s.Name != StationName.Pin))
            yield return ($"{Words.Camel(station.Name.ToString())} station", station.RadiusCurve);
    }

    /// <summary>The set of arms as the model sees it.</summary>
    public FlyweightSet Model(MachineModel machine) => Model(machine, Radii(machine));

    /// <summary>Likewise, from <see cref="Radii"/>: every choice of masses on one ramp step of a body shares them.</summary>
    public FlyweightSet Model(MachineModel machine, SmoothCurve[] radii) => new(
        machine.Profile.DriveClutch.ArmCount,
        [
            (Body.BodyMass.Kilograms, radii[0]),
            .. Body.Stations().Select((s, i) => (Masses.GetValueOrDefault(s.Name), radii[i + 1])),
        ]);

    /// <summary>Radius over travel of the body, then of each station; a pin moves as the body does.</summary>
    public SmoothCurve[] Radii(MachineModel machine)
    {
        double fullShift = machine.Drivetrain.FullShiftTravel;
        SmoothCurve path = Smooth(Body.AdjusterCurves?.First(c => c.Name == AdjusterStep).Points ?? Body.RadiusCurve, fullShift);
        return [path, .. Body.Stations().Select(s => s.Name == StationName.Pin ? path : Smooth(s.RadiusCurve, fullShift))];
    }

    public bool SameAs(FlyweightChoice other) =>
        Body.Id == other.Body.Id
        && AdjusterStep == other.AdjusterStep
        && Body.Stations().All(s => Masses.GetValueOrDefault(s.Name) == other.Masses.GetValueOrDefault(s.Name));

    // A mass beyond what its station may carry is no choice.
    private static double[] MassesOf(MassStation station) =>
        [.. station.Masses.Where(station.Carries).Distinct().Order()];

    private static SmoothCurve Smooth(IReadOnlyList<CurvePoint> points, double fullShiftTravel)
    {
        (double X, double Y)[] ends = [.. points.Select(p => (p.X, p.Y))];
        if (ends[0].X is > 0 and <= FitTolerance.LengthM)
            ends[0].X = 0;
        if (ends[^1].X - fullShiftTravel is < 0 and >= -FitTolerance.LengthM)
            ends[^1].X = fullShiftTravel;
        return new SmoothCurve(ends);
    }
}

/// <summary>A driven spring in a hole with a helix: one candidate of the driven side.</summary>
internal sealed record DrivenChoice(DrivenSpring Spring, SpringHole Hole, Helix Helix)
{
    /// <summary>ψ₀ (rad): the hole's twist and what the spring's legs add.</summary>
    public double PreloadTwist => (Hole.TwistDeg + (Spring.LegOffsetDeg ?? 0)) * (Math.PI / 180);

    /// <summary>How a refusal names it.</summary>
    public string Label(MachineModel machine) => $"{Spring.Id}, {Words.Of(Hole, machine)}, {Helix.Id}";
}

/// <summary>One choice in every slot, in hand.</summary>
internal sealed record SetUp(SpringChoice Spring, FlyweightChoice Flyweight, DrivenChoice Driven)
{
    public DriveSpring DriveSpring => Spring.Spring;

    public PartSet Ids => new(
        DriveSpring.Id, Flyweight.Body.Id, Flyweight.Masses, Driven.Spring.Id, Driven.Hole.Name, Driven.Helix.Id)
    {
        AdjusterStep = Flyweight.AdjusterStep,
        Shims = Spring.Shims,
    };

    /// <summary>The slots in which this set differs from what is fitted.</summary>
    public IReadOnlyList<Slot> ChangesFrom(SetUp fitted)
    {
        var changes = new List<Slot>();
        if (!Spring.SameAs(fitted.Spring))
            changes.Add(Slot.DriveSpring);
        if (!Flyweight.SameAs(fitted.Flyweight))
            changes.Add(Slot.Flyweight);
        if (Driven.Spring.Id != fitted.Driven.Spring.Id)
            changes.Add(Slot.DrivenSpring);
        if (Driven.Hole.Name != fitted.Driven.Hole.Name)
            changes.Add(Slot.Hole);
        if (Driven.Helix.Id != fitted.Driven.Helix.Id)
            changes.Add(Slot.Helix);
        return changes;
    }
}
