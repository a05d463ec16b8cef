using PartPicker.Parts;

namespace PartPicker.Service.Tests.Fuzz;

/// <summary>Texts that mean something to the service: names of the catalog, quantities, words of the API document.</summary>
internal sealed class Pools
{
    private static readonly string[] Odd =
    [
        "", " ", "\t", "x", "é", "😀", "ds-96-2o1", "null", "NaN", "-0", "1e400", "1,5 mm", "../../etc", "a/b", "a~b", "' OR 1=1 --",
        "<b>", "{{7*7}}", "%00", "\u0000", "\u202e", "ｄｓ", "İ", new string('a', 65), new string('9', 4000),
    ];

    private static readonly string[] Masses = ["0 g", "4 g", "4 g", "8 g", "0.25 oz", "99.9 g", "62 gr"];

    private static readonly Dictionary<string, string[]> Quantities = new()
    {
        ["altitude"] = ["0 m", "300 m", "1000 ft", "-500 m", "6000 m", "19000 ft", "1 1/2 in"],
        ["temperature"] = ["20 °C", "-60 °C", "140 °F", "293 K", "7 °C"],
        ["relativeHumidity"] = ["0 %", "60 %", "100 %", "33.3 %"],
        ["speed"] = ["0 km/h", "60 km/h", "25 mph", "20 m/s", "90 km/h"],
        ["pin"] = Masses, ["heel"] = Masses, ["middle"] = Masses, ["tip"] = Masses,
    };

    private static readonly string[] AnyQuantity = [.. Quantities.Values.SelectMany(each => each), "60 lbf/in", "10 N/mm", "1500", "4 furlongs"];

    private readonly Dictionary<string, string[]> byMember;

    public Pools(CatalogSnapshot catalog, IReadOnlyList<string> picks)
    {
        string[] all = [.. catalog.All<Part>().Select(part => part.Id)];
        string[] holes = [.. catalog.Machines.SelectMany(m => m.DrivenClutch.Holes).Select(hole => hole.Name).Distinct()];
        byMember = new()
        {
            // One that can be asked for anything, as often as all of them.
            ["machine"] = [.. catalog.Machines.SelectMany(machine => new[] { machine.Machine.Id, SampleCatalog.Machine })],
            ["fitsMachine"] = [.. catalog.Machines.Select(machine => machine.Machine.Id)],
            ["outlet"] = [.. catalog.Outlets.Select(outlet => outlet.Id)],
            ["driveSpring"] = Ids<DriveSpring>(catalog),
            ["flyweight"] = Ids<Flyweight>(catalog),
            ["drivenSpring"] = Ids<DrivenSpring>(catalog),
            ["helix"] = Ids<Helix>(catalog),
            ["shim"] = Ids<Shim>(catalog),
            ["exclude"] = all,
            ["hole"] = holes,
            ["adjusterStep"] = ["1", "2", "3", "5"],
            ["member"] =
            [
                "/altitude", "/temperature", "/targets/engagementRpm", "/targets/shiftRpm", "/parts/helix", "/parts/driveSpring",
                "/ratioPoints", "/count", "/targets/shiftCurve/0/rpm", "/parts/stationMasses/tip", "/machine", "/a/b/c",
            ],
            ["unit"] = ["m", "ft", "g", "°C", "%", "mm"],
            ["explain"] = ["engagementRpm", "lockUpRpm", "peakPower", "anchoring.thrustFactor", "upshiftRpm/2", "slipMargin/3"],
            ["text"] = ["spring", "ds", "valley", "two seater", "6"],
            ["use"] = ["sport", "utility"],
            ["sort"] = ["name", "-rate", "freeLength", "price", "-stock", "helixDeg", "id"],
            ["getPart"] = all,
            ["getMachine"] = [.. catalog.Machines.Select(machine => machine.Machine.Id)],
            ["getPick"] = [.. picks],
            ["getLatestPick"] = [.. picks],
        };
    }

    /// <summary>A text for a member of that name; mostly one that means something there.</summary>
    public string Text(Random random, string member) =>
        random.Next(20) > 0 && byMember.TryGetValue(member, out string[]? known) && known.Length > 0
            ? Pick(random, known)
            : Pick(random, Odd);

    public static string Quantity(Random random, string member) => random.Next(24) switch
    {
        0 => Pick(random, Odd),
        1 => Pick(random, AnyQuantity),
        _ => Pick(random, Quantities.GetValueOrDefault(member, AnyQuantity)),
    };

    public static T Pick<T>(Random random, IReadOnlyList<T> several) => several[random.Next(several.Count)];

    private static string[] Ids<T>(CatalogSnapshot catalog) where T : Part => [.. catalog.All<T>().Select(part => part.Id)];
}
