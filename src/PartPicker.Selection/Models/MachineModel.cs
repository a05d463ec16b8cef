using System.Runtime.CompilerServices;
using PartPicker.Mechanics;
using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>A machine profile as the model sees it.</summary>
internal sealed class MachineModel
{
    private readonly Lazy<SpeedGrid> speeds;
    private readonly ConditionalWeakTable<Helix, StrongBox<double>> wholeTurns = [];
    private readonly Lock gate = new();
    private MachineAtPoints[] atPoints = [];

    private MachineModel(MachineProfile profile, Drivetrain drivetrain, Lazy<SpeedGrid> speeds)
    {
        Profile = profile;
        Drivetrain = drivetrain;
        this.speeds = speeds;
        Contact = drivetrain.Belt.AtTravel(drivetrain.ContactTravel);
        FullShift = drivetrain.Belt.AtTravel(drivetrain.FullShiftTravel);
    }

    public MachineProfile Profile { get; }

    public Drivetrain Drivetrain { get; }

    /// <summary>The belt where the sheaves first touch it: low gear.</summary>
    public BeltPosition Contact { get; }

    /// <summary>The belt at full shift.</summary>
    public BeltPosition FullShift { get; }

    /// <summary>True where the drive clutch itself takes the belt: only then is there an engagement to ask for.</summary>
    public bool StartsByBelt => Profile.DriveClutch.StartDevice == StartDevice.Belt;

    /// <summary>Length of the drive spring at full shift (m).</summary>
    public double ShortestDriveSpring => Drivetrain.DriveSpringLength - Drivetrain.FullShiftTravel;

    /// <summary>Length of the driven spring at full shift (m).</summary>
    public double ShortestDrivenSpring => Drivetrain.DrivenSpringLength - FullShift.OpeningTravel;

    /// <summary>Turn (rad) at full shift of the cam of a helix.</summary>
    public double WholeTurn(Helix helix) => wholeTurns.GetValue(
        helix, own => new StrongBox<double>(HelixRules.Cam(own, this).Turn(FullShift.OpeningTravel))).Value;

    /// <summary>This machine with shims under the drive spring: its installed length is shorter by their thickness (m).</summary>
    public MachineModel OnShims(double thickness) => thickness == 0
        ? this
        : new MachineModel(Profile, Drivetrain with { DriveSpringLength = Drivetrain.DriveSpringLength - thickness }, speeds);

    /// <summary>The model of a profile, or null with the problem that forbids it.</summary>
    public static MachineModel? Create(MachineProfile profile, List<RequestProblem> problems)
    {
        string? why = NoBelt(profile);
        if (why is null)
        {
            Drivetrain drivetrain = Build(profile);
            var machine = new MachineModel(profile, drivetrain, new Lazy<SpeedGrid>(() => new SpeedGrid(drivetrain.Engine)));
            why = machine.TooShort();
            if (why is null)
                return machine;
        }

        problems.Add(new RequestProblem(
            "machine", RequestProblemCodes.MachineImpossible, profile.Machine.Id,
            $"a machine whose pieces go together; {why} Correct the machine's profile in the catalog."));
        return null;
    }

    /// <summary>K positions evenly by ratio from contact to full shift.</summary>
    public BeltPosition[] Positions(int count) =>
        Drivetrain.Belt.EvenlyByRatio(Drivetrain.ContactTravel, Drivetrain.FullShiftTravel, count);

    /// <summary>The engine's speeds in cells, made when first asked for.</summary>
    public SpeedGrid Speeds => speeds.Value;

    /// <summary>What no air and no anchor changes at K positions, made when first asked for.</summary>
    public MachineAtPoints At(int count)
    {
        lock (gate)
        {
            if (Array.Find(atPoints, at => at.Model.Positions.Count == count) is { } known)
                return known;
            var made = new MachineAtPoints(new ShiftModel(Drivetrain, Positions(count), 1, AnchorFactors.None));
            atPoints = [.. atPoints, made];
            return made;
        }
    }

    /// <summary>Torque in this air over torque at sea level.</summary>
    public double TorqueFactor(AirState air, AirLaw law)
    {
        AirCorrection correction = Correction(law);
        Length altitude = Length.FromMeters(air.AltitudeM);
        Temperature? temperature = air.TemperatureK is { } kelvin ? Temperature.FromKelvins(kelvin) : null;
        return Profile.Engine.BoostedTo is { } boostedTo
            ? Atmosphere.BoostedTorqueFactor(correction, altitude, temperature, boostedTo, air.RelativeHumidity)
            : Atmosphere.TorqueFactor(correction, altitude, temperature, air.RelativeHumidity);
    }

    /// <summary>The published correction that a request names.</summary>
    public static AirCorrection Correction(AirLaw law) =>
        law == AirLaw.Iso1585 ? AirCorrection.Iso1585 : AirCorrection.SaeJ1349;

    /// <summary>This machine with another friction of the belt.</summary>
    public MachineModel WithFriction(double friction) => new(Profile, Drivetrain with { BeltFriction = friction }, speeds);

    /// <summary>Why the belt does not run from contact to full shift; null where it does.</summary>
    private static string? NoBelt(MachineProfile profile)
    {
        double between = profile.Machine.CentreDistance.Meters;
        double belt = profile.Belt.PitchLength.Meters;
        DriveClutch drive = profile.DriveClutch;
        foreach ((double radius, double? found) in BeltPath.Ends(
            between, belt, drive.ContactPitchRadius.Meters, drive.FullShiftTravel.Meters - drive.ContactTravel.Meters,
            Radians(drive.SheaveHalfAngleDeg)))
        {
            if (found is not { } driven)
            {
                return $"a belt of pitch length {Words.Length(belt)} does not run at a drive radius of {Words.Length(radius)} "
                    + $"with shafts {Words.Length(between)} apart.";
            }

            if (radius + driven >= between)
            {
                return $"the belt runs at radii of {Words.Length(radius)} and {Words.Length(driven)}: "
                    + $"together more than the {Words.Length(between)} between the shafts.";
            }
        }

        return null;
    }

    /// <summary>Which piece falls short of the travel: friction by radius, or a spring compressed to nothing; null where none does.</summary>
    private string? TooShort()
    {
        if (Drivetrain.BeltFrictionByRadius is { } known)
        {
            double least = Math.Min(Contact.DriveRadius, FullShift.DrivenRadius);
            double greatest = Math.Max(Contact.DrivenRadius, FullShift.DriveRadius);
            if (!known.Covers(least, greatest))
            {
                return $"the belt's friction by radius is known from {Words.Length(known.From)} to {Words.Length(known.To)}; "
                    + $"the belt runs at radii from {Words.Length(least)} to {Words.Length(greatest)}.";
            }
        }

        if (ShortestDriveSpring <= 0)
        {
            return $"the drive spring is {Words.Length(Drivetrain.DriveSpringLength)} long at rest and would be "
                + $"compressed by {Words.Length(Drivetrain.FullShiftTravel)} at full shift.";
        }

        return ShortestDrivenSpring > 0
            ? null
            : $"the driven spring is {Words.Length(Drivetrain.DrivenSpringLength)} long in low gear and would be "
                + $"compressed by {Words.Length(FullShift.OpeningTravel)} at full shift.";
    }

    private static Drivetrain Build(MachineProfile profile)
    {
        DriveClutch drive = profile.DriveClutch;
        DrivenClutch driven = profile.DrivenClutch;
        double halfAngle = Radians(drive.SheaveHalfAngleDeg);
        return new Drivetrain
        {
            Belt = new BeltPath(
                profile.Machine.CentreDistance.Meters,
                profile.Belt.PitchLength.Meters,
                drive.ContactPitchRadius.Meters,
                drive.ContactTravel.Meters,
                halfAngle),
            Engine = Torque(profile.Engine),
            GrooveHalfAngle = halfAngle,
            BeltFriction = profile.Belt.Friction,
            BeltFrictionByRadius = profile.Belt.FrictionByRadius is { } points
                ? LinearCurve.Table(points.Select(p => (p.X, p.Y)))
                : null,
            BeltEfficiency = profile.Belt.Efficiency,
            BeltMassPerLength = profile.Belt.MassPerLength.KilogramsPerMeter,
            ContactTravel = drive.ContactTravel.Meters,
            FullShiftTravel = drive.FullShiftTravel.Meters,
            DriveSpringLength = drive.SpringLength.Meters,
            DrivenSpringLength = driven.SpringLength.Meters,
            FlyweightFrictionShare = drive.FlyweightFrictionShare,
            CamRadius = driven.CamRadius.Meters,
            CamTorqueShare = driven.CamTorqueShare,
            CamFrictionAngle = Radians(driven.CamFrictionDeg),
            ThrustForm = drive.ThrustLaw == DriveThrustLaw.Locked ? DriveThrustForm.Locked : DriveThrustForm.TwoArc,
            TyreRadius = profile.Gearing.TyreRadius.Meters,
            FinalDrive = profile.Gearing.FinalDrive,
        };
    }

    private static EngineTorque Torque(Engine engine) => engine.PeakTorqueRpm is { } torqueRpm
        ? new EngineTorque(
            new TwoPeaks(
                torqueRpm, engine.PeakTorque!.Value.NewtonMeters, engine.PeakPowerRpm!.Value,
                (double)engine.PeakPower!.Value.Watts),
            engine.RevLimitRpm)
        : new EngineTorque(engine.TorqueCurve.Select(p => (p.X, p.Y)), engine.RevLimitRpm);

    private static double Radians(double degrees) => degrees * (Math.PI / 180);
}
