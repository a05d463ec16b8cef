using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>What stands in for a line that is out of stock is what trying everything finds.</summary>
public sealed class AlternatesAgainstJudgeTests
{
    private const int Catalogs = 400;

    [Fact]
    public void Alternates_equal_trying_everything_on_random_catalogs()
    {
        int otherWays = 0;
        int otherSets = 0;
        int otherHoles = 0;
        int none = 0;
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            var catalog = new RandomCatalog(seed);
            PickAnswer answer = PartSelection.Pick(catalog.Snapshot, catalog.Request).Answer!;
            if (!answer.Picks.Any(p => p.ToBuy.Any(IsOut)))
                continue;
            var plain = new PlainAlternates(catalog.Snapshot, catalog.Request);
            Assert.Equal(0, answer.AlternatesLeftOut);
            foreach (Pick pick in answer.Picks)
            {
                foreach (Purchase line in pick.ToBuy)
                {
                    (PlainPick Pick, long? Price)? expected = plain.Of(pick.Parts, line);
                    string wanted = expected is { } e
                        ? Text(e.Pick.Parts, e.Pick.RoundedMiss, e.Pick.WithinTolerance, e.Price)
                        : "none";
                    string got = line.Alternate is { } a
                        ? Text(a.Parts, (long)Math.Round(a.Miss * 1000), a.WithinTolerance, Sum(a.ToBuy))
                        : "none";
                    Assert.True(wanted == got, $"seed {seed}, rank {pick.Rank}, {line.Id}\nexpected {wanted}\ngot      {got}");
                    Assert.All(line.Alternate?.ToBuy ?? [], bought => Assert.True(bought.Stock >= bought.Packs));
                    none += IsOut(line) && line.Alternate is null ? 1 : 0;
                    otherWays += line.Alternate?.Parts is { } same && Same(same, pick.Parts) ? 1 : 0;
                    otherHoles += line.Alternate is { } moved && moved.Parts.Hole != pick.Parts.Hole ? 1 : 0;
                    otherSets += line.Alternate?.Parts is { } other && !Same(other, pick.Parts) ? 1 : 0;
                }
            }
        }

        // The comparison means something only if every kind of answer is among them.
        Assert.True(
            otherWays > 20 && otherSets > 100 && otherHoles > 5 && none > 100,
            $"{otherWays} other ways, {otherSets} other sets, {otherHoles} in another hole, {none} with none");
    }

    private static bool IsOut(Purchase line) => line.Stock < line.Packs;

    private static long? Sum(IEnumerable<Purchase> lines) => lines.Aggregate((long?)0, (sum, line) => sum + line.PriceMinor);

    private static bool Same(PartSet a, PartSet b) => Text(a, 0, true, null) == Text(b, 0, true, null);

    private static string Text(PartSet set, long miss, bool within, long? price)
    {
        string masses = string.Join(",", Enum.GetValues<StationName>().Select(s => set.StationMasses.GetValueOrDefault(s)));
        return $"miss {miss} {within} price {price} | {set.DriveSpring} {set.Shims} {set.Flyweight} {set.AdjusterStep} [{masses}] "
            + $"{set.DrivenSpring} {set.Hole} {set.Helix}";
    }
}
