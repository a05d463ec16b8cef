using PartPicker.Mechanics;
using UnitsNet;
using static PartPicker.Selection.TreeNodes;

namespace PartPicker.Selection;

/// <summary>Takes the path of the belt apart.</summary>
internal sealed class BeltTree(Scene scene, TreeNodes nodes)
{
    private readonly Drivetrain machine = scene.Drivetrain;

    public ExplainedValue HalfAngle() => Field("driveClutch.sheaveHalfAngleDeg", machine.GrooveHalfAngle, Angle.Info);

    public ExplainedValue Travel(PointLoads point) => Travel(point.Position, point.J);

    public ExplainedValue DriveRadius(PointLoads point) => DriveRadius(point.Position, point.J);

    public ExplainedValue DrivenRadius(PointLoads point) => DrivenRadius(point.Position, point.J);

    public ExplainedValue Ratio(PointLoads point) => Ratio(point.Position, point.J);

    public ExplainedValue DriveWrap(PointLoads point) => nodes.Of(
        "driveWrap", point.Position.DriveWrap, Angle.Info, Relations.DriveWrap, () => Slant(point));

    public ExplainedValue DrivenWrap(PointLoads point) => nodes.Of(
        "drivenWrap", point.Position.DrivenWrap, Angle.Info, Relations.DrivenWrap, () => Slant(point));

    public ExplainedValue OpeningTravel(PointLoads point) => nodes.Of(
        "openingTravel", point.Position.OpeningTravel, Length.Info, Relations.OpeningTravel,
        () => [InLowGear().DrivenRadius(scene.Machine.Contact, 0), DrivenRadius(point), HalfAngle()]);

    private BeltTree InLowGear() => new(scene, nodes.Within("lowGear"));

    private BeltTree AtFullShift() => new(scene, nodes.Within("fullShift"));

    private IEnumerable<ExplainedValue> Slant(PointLoads point) => [DriveRadius(point), DrivenRadius(point), CentreDistance()];

    private ExplainedValue Ratio(BeltPosition belt, int j) => nodes.Of(
        "ratio", belt.Ratio, "", Relations.Ratio, () => [DrivenRadius(belt, j), DriveRadius(belt, j)]);

    private ExplainedValue DriveRadius(BeltPosition belt, int j) => nodes.Of(
        "driveRadius", belt.DriveRadius, Length.Info, Relations.DriveRadius,
        () => [ContactRadius(), Travel(belt, j), ContactTravel(), HalfAngle()]);

    private ExplainedValue DrivenRadius(BeltPosition belt, int j) => nodes.Of(
        "drivenRadius", belt.DrivenRadius, Length.Info, Relations.OpenBeltLength,
        () => [PitchLength(), CentreDistance(), DriveRadius(belt, j)]);

    private ExplainedValue Travel(BeltPosition belt, int j)
    {
        if (belt == scene.Machine.Contact)
            return ContactTravel();
        if (belt == scene.Machine.FullShift)
            return Field("driveClutch.fullShiftTravel", machine.FullShiftTravel, Length.Info);
        return nodes.Of(
            "travel", belt.Travel, Length.Info, Relations.TravelAtRatio,
            () => [RatioWanted(belt, j), PitchLength(), CentreDistance(), ContactRadius(), ContactTravel(), HalfAngle()]);
    }

    private ExplainedValue RatioWanted(BeltPosition belt, int j) => scene.IsRun
        ? nodes.Input("measuredRatio", belt.Ratio)
        : nodes.Of(
            "ratioOfPoint", belt.Ratio, "", Relations.EvenlyByRatio,
            () =>
            [
                InLowGear().Ratio(scene.Machine.Contact, 0),
                AtFullShift().Ratio(scene.Machine.FullShift, j),
                nodes.Input("point", j + 1),
                nodes.Input("pointCount", scene.Model.Positions.Count),
            ]);

    private ExplainedValue ContactTravel() => Field("driveClutch.contactTravel", machine.ContactTravel, Length.Info);

    private ExplainedValue ContactRadius() => Field(
        "driveClutch.contactPitchRadius", scene.Machine.Profile.DriveClutch.ContactPitchRadius.Meters, Length.Info);

    private ExplainedValue PitchLength() => Field(
        "belt.pitchLength", scene.Machine.Profile.Belt.PitchLength.Meters, Length.Info);

    private ExplainedValue CentreDistance() => Field(
        "machine.centreDistance", scene.Machine.Profile.Machine.CentreDistance.Meters, Length.Info);
}
