using static PartPicker.Service.Tests.Errors.BadRequest;

namespace PartPicker.Service.Tests.Errors;

/// <summary>Addresses whose query cannot be met.</summary>
internal static class BadAddresses
{
    private static readonly string TooManyWords = string.Join('&', Enumerable.Range(0, 21).Select(i => $"name=m{i}"));

    private static readonly string LongText = new('x', 121);

    public static readonly IReadOnlyDictionary<string, BadRequest> Cases = new Dictionary<string, BadRequest>
    {
        // Parameters.
        ["a parameter that is not known"] = Get("/v1/parts?colour=red", "colour unknown-parameter"),
        ["a parameter by another case"] = Get("/v1/parts?Kind=belt", "Kind unknown-parameter"),
        ["a parameter without a name"] = Get("/v1/parts?=belt", "? unknown-parameter"),
        ["a kind that is none"] = Get("/v1/parts?kind=spring", "kind unknown-word"),
        ["a kind that is not sold"] = Get("/v1/parts?kind=engine", "kind unknown-word"),
        ["a kind by another case"] = Get("/v1/parts?kind=DriveSpring", "kind unknown-word"),
        ["two kinds"] = Get("/v1/parts?kind=belt&kind=shim", "kind duplicate-parameter"),
        ["no kind"] = Get("/v1/parts?kind=", "kind unknown-word"),
        ["a page of nothing"] = Get("/v1/parts?limit=0", "limit out-of-range"),
        ["a page of everything"] = Get("/v1/parts?limit=201", "limit out-of-range"),
        ["a page below nothing"] = Get("/v1/parts?limit=-1", "limit out-of-range"),
        ["a page of a word"] = Get("/v1/parts?limit=all", "limit out-of-range"),
        ["a page of halves"] = Get("/v1/parts?limit=2.5", "limit out-of-range"),
        ["a page beyond counting"] = Get("/v1/parts?limit=99999999999", "limit out-of-range"),
        ["two pages"] = Get("/v1/parts?limit=2&limit=2", "limit duplicate-parameter"),
        ["no cursor"] = Get("/v1/parts?cursor=", "cursor out-of-range"),
        ["a cursor of nobody's"] = Get("/v1/parts?cursor=next", "cursor cursor-invalid"),
        ["a cursor of a picture"] = Get("/v1/parts?cursor=%F0%9F%92%A5", "cursor cursor-invalid"),
        ["a cursor without end"] = Get($"/v1/parts?cursor={new string('A', 2049)}", "cursor out-of-range"),
        ["no text"] = Get("/v1/parts?text=", "text out-of-range"),
        ["text of blanks"] = Get("/v1/parts?text=%20+%09", "text out-of-range"),
        ["text without end"] = Get($"/v1/parts?text={LongText}", "text out-of-range"),
        ["a machine that nobody has"] = Get("/v1/parts?fitsMachine=moon-buggy", "fitsMachine unknown-machine"),
        ["an outlet that nobody knows"] = Get("/v1/parts?outlet=far-stores", "outlet unknown-outlet"),
        ["two outlets in a list"] = Get(
            "/v1/parts?outlet=quay-stores&outlet=valley-counter", "outlet duplicate-parameter"),
        ["stock of no outlet"] = Get("/v1/parts?inStock=true", "outlet outlet-needed"),
        ["stock by another word"] = Get("/v1/parts?outlet=quay-stores&inStock=yes", "inStock unknown-word"),
        ["units that are none"] = Get("/v1/parts?units=imperial", "units unknown-word"),
        ["a precision that is none"] = Get("/v1/parts?precision=3", "precision unknown-word"),

        // Order.
        ["an order by nothing"] = Get("/v1/parts?sort=", "sort out-of-range"),
        ["an order by a minus"] = Get("/v1/parts?sort=-", "sort unknown-field"),
        ["an order by a plus"] = Get("/v1/parts?sort=%2BfreeLength", "sort unknown-field"),
        ["an order by what is no field"] = Get("/v1/parts?sort=maker", "sort unknown-field"),
        ["an order by the price at no outlet"] = Get("/v1/parts?sort=price", "outlet outlet-needed"),
        ["an order by the stock of nobody"] = Get("/v1/parts?sort=-stock&inStock=true", "outlet outlet-needed"),
        ["a filter by price"] = Get("/v1/parts?outlet=quay-stores&price=3", "price unknown-parameter"),
        ["an order by a field of another kind"] = Get(
            "/v1/parts?kind=helix&sort=freeLength", "sort unknown-field"),
        ["an order by a curve"] = Get("/v1/parts?kind=driveSpring&sort=loadTable", "sort wrong-filter"),
        ["an order by a list"] = Get("/v1/parts?kind=kit&sort=-contents", "sort wrong-filter"),
        ["two orders"] = Get("/v1/parts?sort=name&sort=id", "sort duplicate-parameter"),

        // Ranges.
        ["a range of a field of another kind"] = Get(
            "/v1/parts?kind=helix&rate.min=1%20N/mm", "rate.min unknown-field"),
        ["a range of what is no field"] = Get("/v1/parts?colour.min=3", "colour.min unknown-field"),
        ["a range of text"] = Get("/v1/parts?kind=driveSpring&material.max=z", "material.max wrong-filter"),
        ["a range of a choice"] = Get("/v1/parts?kind=driveSpring&ends.min=open", "ends.min wrong-filter"),
        ["a range of a curve"] = Get(
            "/v1/parts?kind=driveSpring&loadTable.min=3%20N", "loadTable.min wrong-filter"),
        ["a range of ids"] = Get("/v1/parts?supersededBy.min=a", "supersededBy.min wrong-filter"),
        ["a quantity without its unit"] = Get("/v1/parts?kind=driveSpring&rate.min=60", "rate.min unit-needed"),
        ["a quantity of another kind"] = Get(
            "/v1/parts?kind=driveSpring&rate.min=60%20mm", "rate.min unreadable-quantity"),
        ["a quantity that is no number"] = Get(
            "/v1/parts?kind=driveSpring&rate.min=NaN%20N/mm", "rate.min unreadable-quantity"),
        ["a quantity with a comma"] = Get(
            "/v1/parts?kind=driveSpring&rate.max=17,5%20N/mm", "rate.max unreadable-quantity"),
        ["an empty quantity"] = Get("/v1/parts?kind=driveSpring&rate.max=", "rate.max unreadable-quantity"),
        ["a bare number with a unit"] = Get(
            "/v1/parts?kind=driveSpring&activeCoils.min=3%20mm", "activeCoils.min wrong-type"),
        ["a bare number that is none"] = Get(
            "/v1/parts?kind=driveSpring&activeCoils.min=many", "activeCoils.min wrong-type"),
        ["a bare number without end"] = Get(
            "/v1/parts?kind=driveSpring&activeCoils.max=1e400", "activeCoils.max wrong-type"),
        ["not a bare number"] = Get("/v1/parts?kind=helix&helixDeg.max=NaN", "helixDeg.max wrong-type"),
        ["a range upside down"] = Get(
            "/v1/parts?kind=helix&helixDeg.min=50&helixDeg.max=40", "helixDeg.min empty-range"),
        ["a range upside down in two units"] = Get(
            "/v1/parts?kind=driveSpring&freeLength.max=3%20in&freeLength.min=77%20mm",
            "freeLength.min empty-range"),
        ["an end twice"] = Get(
            "/v1/parts?kind=helix&helixDeg.min=40&helixDeg.min=41", "helixDeg.min duplicate-parameter"),

        // Words.
        ["a quantity by a word"] = Get(
            "/v1/parts?kind=driveSpring&freeLength=90%20mm", "freeLength wrong-filter"),
        ["a curve by a word"] = Get("/v1/parts?kind=flyweight&radiusCurve=round", "radiusCurve wrong-filter"),
        ["a field of another kind by a word"] = Get(
            "/v1/parts?kind=belt&material=music-wire-a228", "material unknown-field"),
        ["a choice that is none"] = Get("/v1/parts?kind=driveSpring&ends=round&ends=open", "ends unknown-word"),
        ["a material that is none"] = Get("/v1/parts?kind=driveSpring&material=steel", "material unknown-word"),
        ["no material"] = Get("/v1/parts?material=", "material unknown-word"),
        ["no word"] = Get("/v1/parts?kind=driveSpring&name=", "name out-of-range"),
        ["more words than a list takes"] = Get(
            $"/v1/parts?kind=driveSpring&{TooManyWords}", "name too-many-filters"),
        ["everything at once"] = Get(
            "/v1/parts?kind=helix&limit=0&fitsMachine=x&outlet=y&sort=z&colour=red&rate.min=3&helixDeg=40&anglePoints.min=1&units=u",
            "fitsMachine unknown-machine", "outlet unknown-outlet", "sort unknown-field", "limit out-of-range",
            "units unknown-word",
            "rate.min unknown-field", "helixDeg wrong-filter", "anglePoints.min wrong-filter",
            "colour unknown-parameter"),

        // One part, machines, and addresses without a query.
        ["a part at an outlet that nobody knows"] = Get("/v1/parts/ds-96-201?outlet=far-stores", "outlet unknown-outlet"),
        ["a part at two outlets"] = Get(
            "/v1/parts/ds-96-201?outlet=quay-stores&outlet=valley-counter", "outlet duplicate-parameter"),
        ["a part with a filter"] = Get("/v1/parts/ds-96-201?kind=driveSpring", "kind unknown-parameter"),
        ["a year that is a word"] = Get("/v1/machines?year=last", "year out-of-range"),
        ["a year before all machines"] = Get("/v1/machines?year=1949", "year out-of-range"),
        ["two years"] = Get("/v1/machines?year=2012&year=2013", "year duplicate-parameter"),
        ["families that are none"] = Get(
            "/v1/machines?driveFamily=arms&drivenFamily=&startDevice=Belt",
            "driveFamily unknown-word", "drivenFamily unknown-word", "startDevice unknown-word"),
        ["a name of blanks"] = Get("/v1/machines?text=+", "text out-of-range"),
        ["a use without a word"] = Get("/v1/machines?use=", "use out-of-range"),
        ["machines in inches"] = Get("/v1/machines?units=inch", "units unknown-parameter"),
        ["a machine with a filter"] = Get("/v1/machines/canyon-racer?use=sport", "use unknown-parameter"),
        ["a pick in inches"] = Get("/v1/picks/0?units=inch", "units unknown-parameter"),
    };
}
