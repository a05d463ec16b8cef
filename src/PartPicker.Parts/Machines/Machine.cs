using UnitsNet;

namespace PartPicker.Parts;

/// <summary>A machine: shared pieces joined by id, and what is known of this kind of machine as it runs.</summary>
public sealed record Machine : MachinePiece
{
    public override ItemKind Kind => ItemKind.Machine;

    public string EngineId { get; init; } = "";
    public string DriveClutchId { get; init; } = "";
    public string DrivenClutchId { get; init; } = "";
    public string BeltId { get; init; } = "";
    public string GearingId { get; init; } = "";

    /// <summary>What it is used for, in a word, as "utility" or "snow".</summary>
    public string? Use { get; init; }

    /// <summary>C: distance between the shafts.</summary>
    public Length CentreDistance { get; init; }

    /// <summary>The parts fitted as delivered.</summary>
    public PartSet? Fitted { get; init; }

    /// <summary>Measured runs of this machine; the first anchors a prediction that brings none of its own.</summary>
    public IReadOnlyList<Baseline> Baselines { get; init; } = [];
}

/// <summary>A machine with its pieces in hand.</summary>
public sealed record MachineProfile(
    Machine Machine, Engine Engine, DriveClutch DriveClutch, DrivenClutch DrivenClutch, Belt Belt, Gearing Gearing)
{
    /// <summary>The measured run that anchors where a request brings none; null when the catalog holds none.</summary>
    public Baseline? OwnBaseline => Machine.Baselines.Count > 0 ? Machine.Baselines[0] : null;

    public IReadOnlyList<CatalogItem> Pieces => [Machine, Engine, DriveClutch, DrivenClutch, Belt, Gearing];

    /// <summary>Every value that is only usual for its class, as "piece/field".</summary>
    public IEnumerable<string> ClassDefaults =>
        from piece in Pieces
        from origin in piece.Origins
        where origin.Value == Origin.ClassDefault
        orderby piece.Id, origin.Key
        select $"{piece.Id}/{origin.Key}";
}

/// <summary>One choice in every slot, by id.</summary>
/// <param name="DriveSpring">Id of the drive spring.</param>
/// <param name="Flyweight">Id of the flyweight body.</param>
/// <param name="StationMasses">Mass (kg) in each station of that body; a station left out is empty.</param>
/// <param name="DrivenSpring">Id of the driven spring.</param>
/// <param name="Hole">Name of the spring hole.</param>
/// <param name="Helix">Id of the helix.</param>
public sealed record PartSet(
    string DriveSpring,
    string Flyweight,
    IReadOnlyDictionary<StationName, double> StationMasses,
    string DrivenSpring,
    string Hole,
    string Helix)
{
    /// <summary>Step of an adjustable ramp; null where the flyweight has none.</summary>
    public string? AdjusterStep { get; init; }

    /// <summary>What lies under the drive spring; null: nothing.</summary>
    public FittedShims? Shims { get; init; }
}

/// <summary>Equal shims under the drive spring.</summary>
public sealed record FittedShims(string ShimId, int Count);

/// <summary>A measured run: with these parts, in this air, it engaged and held these rpm.</summary>
/// <param name="Parts">What was fitted.</param>
/// <param name="EngagementRpm">Engine speed at which the belt took hold; null where another device starts the machine.</param>
/// <param name="Shift">Engine speed held at full throttle, by ratio.</param>
/// <param name="FlatShiftRpm">One speed held through the whole shift, where no ratio was noted.</param>
/// <param name="Air">Altitude, temperature and humidity of the run.</param>
public sealed record Baseline(
    PartSet Parts,
    double? EngagementRpm,
    IReadOnlyList<RatioRpm> Shift,
    double? FlatShiftRpm,
    AirState Air)
{
    /// <summary>Least engine speed (rpm) that a run may state, or a target ask for.</summary>
    public const double MinRpm = 100;

    /// <summary>Greatest engine speed (rpm) that a run may state, or a target ask for.</summary>
    public const double MaxRpm = 30_000;

    /// <summary>True: the belt's friction is solved too, from shift points spread over ratio.</summary>
    public bool SolveFriction { get; init; }
}

/// <summary>An engine speed at a ratio.</summary>
public readonly record struct RatioRpm(double Ratio, double Rpm);

/// <summary>Where, how warm and how humid: geopotential altitude in metres; temperature in kelvin, standard when null.</summary>
public readonly record struct AirState(double AltitudeM, double? TemperatureK)
{
    /// <summary>Relative humidity, a share from 0 to 1; dry when null.</summary>
    public double? RelativeHumidity { get; init; }

    /// <summary>Lowest place (m), of a measured run as of a question.</summary>
    public const double MinAltitudeM = -500;

    /// <summary>Highest place (m).</summary>
    public const double MaxAltitudeM = 6_000;

    /// <summary>Coldest air (K): −60 °C.</summary>
    public const double MinTemperatureK = 213.15;

    /// <summary>Warmest air (K): 60 °C.</summary>
    public const double MaxTemperatureK = 333.15;

    /// <summary>Driest air.</summary>
    public const double MinRelativeHumidity = 0;

    /// <summary>Air that takes no more vapour.</summary>
    public const double MaxRelativeHumidity = 1;
}

/// <summary>The five choices that make a set-up.</summary>
public enum Slot
{
    DriveSpring,
    Flyweight,
    DrivenSpring,
    Hole,
    Helix,
}
