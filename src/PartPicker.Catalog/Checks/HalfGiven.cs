using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Fields that tell something only together.</summary>
internal static class HalfGiven
{
    /// <summary>All of them or none.</summary>
    private static readonly Dictionary<ItemKind, string[][]> Groups = new()
    {
        [ItemKind.DriveSpring] = [["firstLength", "firstLoad", "secondLength", "secondLoad"]],
        [ItemKind.DrivenSpring] =
            [["loadLength", "load"], ["firstTwistDeg", "firstTorque", "secondTwistDeg", "secondTorque"]],
        [ItemKind.Flyweight] = [["referenceArm", "massOverReference"]],
        [ItemKind.Engine] = [["peakTorqueRpm", "peakTorque", "peakPowerRpm", "peakPower"]],
        [ItemKind.Helix] = [["finishDeg", "finishTravel"]],
        [ItemKind.DrivenClutch] = [["adjusterFromDeg", "adjusterToDeg", "adjusterStepDeg"]],
    };

    /// <summary>One that tells nothing without another, which may be any of several.</summary>
    private static readonly Dictionary<ItemKind, Need[]> Needs = new()
    {
        [ItemKind.Flyweight] =
        [
            new("pinMasses", "adjusterCurves"), .. OfStation("heel"), .. OfStation("middle"), .. OfStation("tip"),
        ],
    };

    /// <summary>True when there was a finding, which points at the first field that is left out.</summary>
    public static bool Check(DraftItem item, Findings findings)
    {
        bool found = false;
        foreach (string[] group in Groups.GetValueOrDefault(item.Item.Kind) ?? [])
        {
            string[] missing = [.. group.Where(name => !item.Written.ContainsKey(name))];
            if (missing.Length == 0 || missing.Length == group.Length)
                continue;
            found = true;
            item.Refuse(missing[0], findings, new(
                FindingCodes.HalfGiven,
                $"{string.Join(", ", group)} belong together. Give all of them or none; "
                + $"{string.Join(", ", missing)} {(missing.Length == 1 ? "is" : "are")} left out."));
        }

        foreach (Need need in Needs.GetValueOrDefault(item.Item.Kind) ?? [])
        {
            if (!item.Written.ContainsKey(need.Field) || need.OneOf.Any(item.Written.ContainsKey))
                continue;
            found = true;
            item.Refuse(need.OneOf[0], findings, new(
                FindingCodes.HalfGiven,
                $"{need.Field} tells nothing without {string.Join(" or ", need.OneOf)}. Give both or none."));
        }

        return found;
    }

    /// <summary>The curve of a station may be that of the arm profile.</summary>
    private static Need[] OfStation(string station) =>
    [
        new($"{station}Curve", $"{station}Masses"),
        new($"{station}Masses", $"{station}Curve", "armProfile"),
        new($"{station}Holding", $"{station}Masses"),
        new($"{station}MassLimit", $"{station}Masses"),
        new($"{station}LengthLimit", $"{station}Masses"),
    ];

    private sealed record Need(string Field, params string[] OneOf);
}
