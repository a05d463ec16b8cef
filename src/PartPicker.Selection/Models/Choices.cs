using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>A flyweight body with one mass in each of its stations: one candidate.</summary>
internal sealed record FlyweightChoice(Flyweight Body, IReadOnlyDictionary<StationName, double> Masses)
{
    /// <summary>How many choices of masses a body has.</summary>
    public static long CountOf(Flyweight body) =>
        body.Stations().Aggregate(1L, (count, station) => count * MassesOf(station).Length);

    /// <summary>Every choice of masses of a body, lightest first in each station, heel before tip.</summary>
    public static IEnumerable<FlyweightChoice> AllOf(Flyweight body)
    {
        IEnumerable<Dictionary<StationName, double>> choices = [[]];
        foreach (MassStation station in body.Stations())
        {
            double[] masses = MassesOf(station);
            choices = choices.SelectMany(
                _ => masses, (chosen, mass) => new Dictionary<StationName, double>(chosen) { [station.Name] = mass });
        }

        return choices.Select(masses => new FlyweightChoice(body, masses));
    }

    /// <summary>The radius curve of the body (null) and of each of its stations, over travel up to full shift.</summary>
    /// <remarks>An end that falls short of rest or of full shift by less than the tolerance is set there.</remarks>
    public static IEnumerable<(StationName? Station, SmoothCurve Curve)> Curves(Flyweight body, double fullShiftTravel)
    {
        yield return (null, Smooth(body.RadiusCurve, fullShiftTravel));
        foreach (MassStation station in body.Stations())
            yield return (station.Name, Smooth(station.RadiusCurve, fullShiftTravel));
    }

    /// <summary>The set of arms as the model sees it.</summary>
    public FlyweightSet Model(MachineModel machine) => new(
        machine.Profile.DriveClutch.ArmCount,
        Curves(Body, machine.Drivetrain.FullShiftTravel)
            .Select(c => (c.Station is { } name ? Masses.GetValueOrDefault(name) : Body.BodyMass.Kilograms, c.Curve)));

    public bool SameAs(FlyweightChoice other) =>
        Body.Id == other.Body.Id
        && Body.Stations().All(s => Masses.GetValueOrDefault(s.Name) == other.Masses.GetValueOrDefault(s.Name));

    private static double[] MassesOf(MassStation station) => [.. station.Masses.Distinct().Order()];

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
    /// <summary>ψ₀ (rad).</summary>
    public double PreloadTwist => Hole.TwistDeg * (Math.PI / 180);

    /// <summary>How a refusal names it.</summary>
    public string Label => $"{Spring.Id}, hole {Hole.Name}, {Helix.Id}";
}

/// <summary>One choice in every slot, in hand.</summary>
internal sealed record SetUp(DriveSpring DriveSpring, FlyweightChoice Flyweight, DrivenChoice Driven)
{
    public PartSet Ids => new(
        DriveSpring.Id, Flyweight.Body.Id, Flyweight.Masses, Driven.Spring.Id, Driven.Hole.Name, Driven.Helix.Id);

    /// <summary>The slots in which this set differs from what is fitted.</summary>
    public IReadOnlyList<Slot> ChangesFrom(SetUp fitted)
    {
        var changes = new List<Slot>();
        if (DriveSpring.Id != fitted.DriveSpring.Id)
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
