using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Pairs of fields of which one must be below the other.</summary>
internal static class Orders
{
    /// <summary>Relative play, so that the same length in inches and in millimetres compares as equal.</summary>
    private const double Play = 1e-9;

    private static readonly Order Years = new("fromYear", "toYear", MayEqual: true);

    private static readonly Dictionary<ItemKind, Order[]> ByKind = new()
    {
        [ItemKind.DriveSpring] =
        [
            new("wireDiameter", "outsideDiameter", Times: 2),
            new("solidLength", "freeLength"),
            new("firstLength", "freeLength", MayEqual: true),
            new("secondLength", "freeLength", MayEqual: true),
            new("activeCoils", "totalCoils", MayEqual: true),
        ],
        [ItemKind.DrivenSpring] =
        [
            new("wireDiameter", "outsideDiameter", Times: 2),
            new("insideDiameter", "outsideDiameter"),
            new("loadLength", "freeLength"),
            new("solidLength", "freeLength"),
        ],
        [ItemKind.Belt] = [new("wearLimit", "topWidth")],
        [ItemKind.Shim] = [new("insideDiameter", "outsideDiameter")],
        [ItemKind.ArmProfile] = [Years],
        [ItemKind.Engine] = [Years, new("idleRpm", "revLimitRpm")],
        [ItemKind.DriveClutch] = [Years, new("contactTravel", "fullShiftTravel"), new("postDiameter", "cupBore")],
        [ItemKind.DrivenClutch] = [Years, new("adjusterFromDeg", "adjusterToDeg")],
        [ItemKind.Gearing] = [Years],
        [ItemKind.Machine] = [Years],
    };

    public static void Check(DraftItem item, Findings findings)
    {
        foreach (Order order in ByKind.GetValueOrDefault(item.Item.Kind) ?? [])
        {
            if (Value(order.Lesser) * order.Times is not { } lesser || Value(order.Greater) is not { } greater)
                continue;
            double play = greater * Play;
            if (order.MayEqual ? lesser <= greater + play : lesser < greater - play)
                continue;
            string times = order.Times == 1 ? "" : $"{order.Times} times ";
            item.Refuse(order.Lesser, findings, new(
                FindingCodes.NotBelow,
                $"{times}{order.Lesser} must {(order.MayEqual ? "not be above" : "be below")} "
                + $"{order.Greater}, which is {item.Written[order.Greater]}. Check both."));
        }

        double? Value(string field) => item.Written.ContainsKey(field)
            ? Convert.ToDouble(FieldRegistry.For(item.Item.Kind).First(f => f.Name == field).Get(item.Item))
            : null;
    }

    private sealed record Order(string Lesser, string Greater, int Times = 1, bool MayEqual = false);
}
