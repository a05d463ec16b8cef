using PartPicker.Api.Docs;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>Writes a prediction.</summary>
internal static class PredictionWriter
{
    public static PredictionWire Write(PredictionRequest request, PredictionAnswer answer, AnswerWriter writer)
    {
        Prediction prediction = answer.Prediction;
        MachineProfile machine = request.Machine;
        return new PredictionWire
        {
            CatalogRevision = writer.Catalog.Revision,
            ModelVersion = PartSelection.ModelVersion,
            Units = writer.Format.UnitsWord,
            Precision = writer.Format.PrecisionWord,
            Machine = new NamedIdWire { Id = machine.Machine.Id, Name = machine.Machine.Name },
            Parts = writer.Parts(answer.Parts),
            Air = Air(request.Air, request.AirLaw, writer),
            Anchored = prediction.Anchoring is not null,
            Anchoring = prediction.Anchoring is { } anchoring ? Anchoring(anchoring, writer) : null,
            EngagementRpm = writer.Rpm(prediction.EngagementRpm),
            EngagementBandRpm = writer.Rpm(prediction.EngagementBandRpm),
            EngagementTravel = writer.Length(prediction.EngagementTravel),
            LockUpRpm = writer.Rpm(prediction.LockUpRpm),
            LockUpReason = LockUpReason(prediction, machine),
            ShiftOutRpm = writer.Rpm(prediction.ShiftOutRpm),
            PeakPowerRpm = writer.Rpm(prediction.PeakPowerRpm),
            PeakPower = writer.Power(prediction.PeakPower),
            TorqueFactor = writer.Factor(prediction.TorqueFactor),
            Superseded = [.. answer.Superseded.Select(PickWriter.Supersession)],
            Curve = [.. prediction.Curve.Select(point => Point(point, machine.Engine.RevLimitRpm, writer))],
            Change = Change(answer.Change, writer),
            Reverse = prediction.Reverse is { } reverse ? Reverse(reverse, writer) : null,
            Sensitivities = [.. answer.Sensitivities.Select(each => Sensitivity(each, writer))],
            Explanations = [.. answer.Explanations.Select(each => Explained(each, writer))],
            Cautions = [.. answer.Cautions.Select(PickWriter.Caution)],
            Limits = ModelLimits.Sentences,
        };
    }

    public static ChangeWire? Change(SetChange? change, AnswerWriter writer) => change is null ? null : new ChangeWire
    {
        EngagementChangeRpm = writer.Rpm(change.EngagementRpm),
        EngagementChangeBandRpm = writer.Rpm(change.EngagementBandRpm),
        Curve = [.. change.Curve.Select(point => new ChangePointWire
        {
            Ratio = writer.Ratio(point.Ratio),
            UpshiftChangeRpm = writer.Rpm(point.UpshiftRpm),
            UpshiftChangeBandRpm = writer.Rpm(point.UpshiftBandRpm),
        })],
    };

    private static string? LockUpReason(Prediction prediction, MachineProfile machine) => prediction switch
    {
        { LockUpRpm: not null } => null,
        { EngagementRpm: null } => "The belt does not start this machine.",
        _ => $"The drive clutch still slips in low gear at the rev limit of {machine.Engine.RevLimitRpm} rpm.",
    };

    private static ReverseClampWire Reverse(ReverseClamp reverse, AnswerWriter writer) => new()
    {
        Angle = writer.Angle(reverse.Angle),
        ClampRatio = writer.Share(reverse.ClampRatio),
        DrivingClamp = reverse.DrivingClamp is { } driving ? writer.Force(driving) : null,
        Clamp = reverse.Clamp is { } braking ? writer.Force(braking) : null,
    };

    private static SensitivityWire Sensitivity(Sensitivity sensitivity, AnswerWriter writer) => new()
    {
        Parameter = sensitivity.Parameter,
        Step = writer.Measure(sensitivity.Step),
        EngagementRpm = writer.Rpm(sensitivity.EngagementRpm),
        UpshiftRpm = [.. sensitivity.UpshiftRpm.Select(writer.Rpm)],
    };

    private static ExplainedValueWire Explained(ExplainedValue explained, AnswerWriter writer)
    {
        QuantityWire value = explained switch
        {
            { Dimension: { } dimension } => writer.Quantity(explained.Value, dimension),
            { Unit: "m" } => writer.Altitude(explained.Value),
            { Unit: "rpm" } => new QuantityWire { Value = writer.Rpm(explained.Value), Unit = explained.Unit },
            _ => new QuantityWire { Value = writer.Factor(explained.Value), Unit = explained.Unit },
        };
        return new ExplainedValueWire
        {
            Name = explained.Name,
            Value = value.Value,
            Unit = value.Unit,
            Relation = explained.Relation?.Name,
            Equation = explained.Relation?.Equation,
            Source = explained.Relation?.Source,
            Page = explained.Relation is { } relation ? MarkdownPage.PathOf(relation) : null,
            Parts = [.. explained.Parts.Select(part => Explained(part, writer))],
        };
    }

    public static AirWire Air(AirState air, AirLaw law, AnswerWriter writer) => new()
    {
        Altitude = writer.Altitude(air.AltitudeM),
        Temperature = writer.Temperature(air.TemperatureK),
        RelativeHumidity = writer.Percent(air.RelativeHumidity),
        AirLaw = WireJson.Word(law),
    };

    private static AnchoringWire Anchoring(Anchoring anchoring, AnswerWriter writer) => new()
    {
        FlyweightFactor = writer.Factor(anchoring.FlyweightFactor),
        ThrustFactor = writer.Factor(anchoring.ThrustFactor),
        SolvedFriction = anchoring.Friction is { } friction ? writer.Factor(friction) : null,
        Residuals = [.. anchoring.Residuals.Select(residual => new ResidualWire
        {
            Ratio = writer.Ratio(residual.Ratio), Rpm = writer.Rpm(residual.Rpm),
        })],
        Warnings = anchoring.Warnings,
    };

    private static ShiftPointWire Point(ShiftPoint point, double revLimitRpm, AnswerWriter writer) => new()
    {
        Ratio = writer.Ratio(point.Ratio),
        Travel = writer.Length(point.Travel),
        OpeningTravel = writer.Length(point.OpeningTravel),
        DriveRadius = writer.Length(point.DriveRadius),
        DrivenRadius = writer.Length(point.DrivenRadius),
        DriveWrap = writer.Angle(point.DriveWrap),
        DrivenWrap = writer.Angle(point.DrivenWrap),
        HelixAngle = writer.Angle(point.HelixAngle),
        CamTurn = writer.Angle(point.CamTurn),
        HelixHold = writer.Share(point.HelixHold),
        HelixAloneHolds = point.HelixAloneHolds,
        HysteresisRpm = writer.Rpm(point.HysteresisRpm),
        Upshift = point.Upshift is { } upshift ? Balance(upshift, writer) : null,
        UpshiftBandRpm = writer.Rpm(point.UpshiftBandRpm),
        Backshift = point.Backshift is { } backshift ? Balance(backshift, writer) : null,
        Reason = Reason(point, revLimitRpm),
    };

    private static BalanceWire Balance(Balance balance, AnswerWriter writer) => new()
    {
        Rpm = writer.Rpm(balance.Rpm),
        EngineTorque = writer.Torque(balance.EngineTorque),
        Power = writer.Power(balance.Power),
        PowerLost = writer.Power(balance.PowerLost),
        DrivenClamp = writer.Force(balance.DrivenClamp),
        DriveThrust = writer.Force(balance.DriveThrust),
        FlyweightThrust = writer.Force(balance.FlyweightThrust),
        SpringForce = writer.Force(balance.SpringForce),
        TightTension = writer.Force(balance.TightTension),
        SlackTension = writer.Force(balance.SlackTension),
        TightTensionNet = writer.Force(balance.TightTensionNet),
        SlackTensionNet = writer.Force(balance.SlackTensionNet),
        ActiveArc = writer.Angle(balance.ActiveArc),
        DriveActiveArc = writer.Angle(balance.DriveActiveArc),
        SlipMargin = writer.Share(balance.SlipMargin),
        Slips = balance.Slips,
        BeltSpeed = writer.Speed(balance.BeltSpeed),
        VehicleSpeed = writer.Speed(balance.VehicleSpeed),
    };

    private static string? Reason(ShiftPoint point, double revLimitRpm) => (point.Upshift, point.Backshift) switch
    {
        (null, null) =>
            $"It does not shift here: the clutches do not balance below the rev limit of {revLimitRpm} rpm.",
        (null, _) => $"It does not shift up here below the rev limit of {revLimitRpm} rpm.",
        (_, null) => $"It does not shift back here below the rev limit of {revLimitRpm} rpm.",
        _ => null,
    };
}
