using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What a change of parts costs at an outlet, in minor units of its currency.</summary>
/// <remarks>A hole costs nothing and neither does a mass moved into a station: only bodies, springs and helices are priced.</remarks>
internal sealed class PriceList(Outlet? outlet, SetUp fitted)
{
    /// <summary>The sum over the parts that are not already fitted; null when one of them has no known price.</summary>
    public long? Of(DriveSpring spring, FlyweightChoice flyweight, DrivenChoice driven)
    {
        if (outlet is null)
            return null;
        return Sum(
            Unless(spring.Id == fitted.DriveSpring.Id, spring.Id),
            Unless(flyweight.Body.Id == fitted.Flyweight.Body.Id, flyweight.Body.Id),
            Unless(driven.Spring.Id == fitted.Driven.Spring.Id, driven.Spring.Id),
            Unless(driven.Helix.Id == fitted.Driven.Helix.Id, driven.Helix.Id));
    }

    private static long? Sum(long? a, long? b, long? c, long? d) => a + b + c + d;

    private long? Unless(bool alreadyFitted, string id) =>
        alreadyFitted ? 0 : outlet!.Offers.GetValueOrDefault(id)?.PriceMinor;
}
