using System.Collections;
using System.Reflection;
using UnitsNet;

namespace PartPicker.Tests.Selection;

/// <summary>Finds numbers in an answer that are no numbers.</summary>
internal static class FiniteNumbers
{
    /// <summary>Path of the first number that is not finite; null where all are.</summary>
    public static string? FirstBad(object? value, string path = "")
    {
        switch (value)
        {
            case null or string or Enum or bool or int or long or QuantityInfo:
                return null;
            case double number:
                return double.IsFinite(number) ? null : path;
            case IQuantity quantity:
                return double.IsFinite((double)quantity.Value) ? null : path;
            case IEnumerable list:
                return list.Cast<object?>().Select((v, i) => FirstBad(v, $"{path}/{i}")).FirstOrDefault(bad => bad is not null);
            default:
                return value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
                    .Select(p => FirstBad(p.GetValue(value), $"{path}/{p.Name}")).FirstOrDefault(bad => bad is not null);
        }
    }
}
