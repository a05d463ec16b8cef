using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Fields that tell something only together.</summary>
internal static class HalfGiven
{
    private static readonly Dictionary<ItemKind, string[][]> Groups = new()
    {
        [ItemKind.DriveSpring] = [["firstLength", "firstLoad", "secondLength", "secondLoad"]],
        [ItemKind.DrivenSpring] =
            [["loadLength", "load"], ["firstTwistDeg", "firstTorque", "secondTwistDeg", "secondTorque"]],
        [ItemKind.Flyweight] =
            [["heelCurve", "heelMasses"], ["middleCurve", "middleMasses"], ["tipCurve", "tipMasses"]],
        [ItemKind.Helix] = [["finishDeg", "finishTravel"]],
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

        return found;
    }
}
