using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>Writes machines.</summary>
internal static class MachineWriter
{
    public static MachineListWire WriteList(string revision, IEnumerable<MachineProfile> profiles) => new()
    {
        CatalogRevision = revision,
        Items = [.. profiles.Select(profile => new MachineSummaryWire
        {
            Id = profile.Machine.Id,
            Name = profile.Machine.Name,
            Use = profile.Machine.Use,
            FromYear = profile.Machine.FromYear,
            ToYear = profile.Machine.ToYear,
            DriveFamily = WireJson.Word(profile.DriveClutch.Family),
            DrivenFamily = WireJson.Word(profile.DrivenClutch.Family),
            StartDevice = WireJson.Word(profile.DriveClutch.StartDevice),
            FittedKnown = profile.Machine.Fitted is not null,
            BaselineCount = profile.Machine.Baselines.Count,
            Holes = [.. profile.DrivenClutch.TwistChoices().Select(hole => hole.Name)],
        })],
    };

    public static MachineWire Write(MachineProfile profile, AnswerWriter writer) => new()
    {
        CatalogRevision = writer.Catalog.Revision,
        Id = profile.Machine.Id,
        Name = profile.Machine.Name,
        Use = profile.Machine.Use,
        FromYear = profile.Machine.FromYear,
        ToYear = profile.Machine.ToYear,
        DriveFamily = WireJson.Word(profile.DriveClutch.Family),
        DrivenFamily = WireJson.Word(profile.DrivenClutch.Family),
        StartDevice = WireJson.Word(profile.DriveClutch.StartDevice),
        Pieces = [.. profile.Pieces.Select(piece => Piece(piece, writer))],
        Holes = FieldWriter.Holes(profile.DrivenClutch.TwistChoices()),
        Fitted = profile.Machine.Fitted is { } fitted ? writer.Parts(fitted) : null,
        Baselines = [.. profile.Machine.Baselines.Select(baseline => Baseline(baseline, writer))],
    };

    private static MachinePieceWire Piece(CatalogItem piece, AnswerWriter writer)
    {
        OrderedDictionary<string, FieldValueWire> fields = FieldWriter.Write(piece, writer);
        OrderedDictionary<string, string> origins = [];
        foreach (string field in fields.Keys)
        {
            if (piece.Origins.TryGetValue(field, out Origin origin))
                origins.Add(field, WireJson.Word(origin));
        }

        return new MachinePieceWire
        {
            Kind = WireJson.Word(piece.Kind),
            Id = piece.Id,
            Name = piece.Name,
            Fields = fields,
            Origins = origins,
        };
    }

    private static MachineBaselineWire Baseline(Baseline baseline, AnswerWriter writer) => new()
    {
        Parts = writer.Parts(baseline.Parts),
        EngagementRpm = writer.Rpm(baseline.EngagementRpm),
        ShiftRpm = writer.Rpm(baseline.FlatShiftRpm),
        ShiftCurve = [.. baseline.Shift.Select(point => new RatioRpmWire
        {
            Ratio = writer.Ratio(point.Ratio), Rpm = writer.Rpm(point.Rpm),
        })],
        Altitude = writer.Altitude(baseline.Air.AltitudeM),
        Temperature = writer.Temperature(baseline.Air.TemperatureK),
        RelativeHumidity = writer.Percent(baseline.Air.RelativeHumidity),
    };
}
