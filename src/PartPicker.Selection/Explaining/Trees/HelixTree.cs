using PartPicker.Mechanics;
using UnitsNet;
using static PartPicker.Selection.TreeNodes;

namespace PartPicker.Selection;

/// <summary>Takes angle and turn of the cam apart.</summary>
internal sealed class HelixTree(Scene scene, TreeNodes nodes)
{
    private readonly BeltTree belt = new(scene, nodes);

    public ExplainedValue CamTurn(PointLoads point) => nodes.Of(
        "camTurn", scene.Driven.CamTurn[point.J], Angle.Info, Relations.CamTurn,
        () => [belt.OpeningTravel(point), CamRadius(), .. Points()]);

    public ExplainedValue HelixAngle(PointLoads point) => nodes.Of(
        "helixAngle", scene.Driven.HelixAngle[point.J], Angle.Info, Relations.HelixAngle,
        () => [belt.OpeningTravel(point), .. Points()]);

    public ExplainedValue CamRadius() => Field("drivenClutch.camRadius", scene.Drivetrain.CamRadius, Length.Info);

    private IEnumerable<ExplainedValue> Points() => CurveParts.All(
        nodes, "helix.points", [.. scene.Set.Driven.Helix.Angles().Select(p => (p.X, p.Y))],
        new("travel", Length.Info), new("angle", Angle.Info));
}
