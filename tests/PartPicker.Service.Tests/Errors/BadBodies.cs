using static PartPicker.Service.Tests.Errors.BadRequest;

namespace PartPicker.Service.Tests.Errors;

/// <summary>Bodies that ask for what cannot be.</summary>
internal static class BadBodies
{
    private static readonly string TooManyIds = string.Join(", ", Enumerable.Repeat("\"hx-40\"", 201));

    private static readonly string TooManySpeeds = string.Join(
        ", ", Enumerable.Range(0, 51).Select(i => $$"""{ "speed": "{{i}} km/h", "rpm": 8000 }"""));

    public static readonly IReadOnlyDictionary<string, BadRequest> Cases = new Dictionary<string, BadRequest>
    {
        // The body as a whole.
        ["no object"] = new("POST /v1/picks", "[]", [" wrong-type"]),
        ["an empty pick"] = new("POST /v1/picks", "{}", ["/machine missing-member", "/targets missing-member"]),
        ["an empty prediction"] = new("POST /v1/predictions", "{}", ["/machine missing-member"]),
        ["a machine that nobody has"] = new(
            "POST /v1/predictions", """{ "machine": "moon-buggy" }""", ["/machine unknown-machine"]),
        ["a machine by number"] = new("POST /v1/predictions", """{ "machine": 7 }""", ["/machine wrong-type"]),
        ["a machine without a name"] = new(
            "POST /v1/predictions", """{ "machine": "" }""", ["/machine out-of-range"]),
        ["a machine by the id of a part"] = new(
            "POST /v1/predictions", """{ "machine": "ds-96-201" }""", ["/machine unknown-machine"]),
        ["a member by another case"] = Pick(""" "Outlet": "valley-counter" """, "/Outlet unknown-member"),
        ["a member twice"] = Pick(""" "group": true, "group": false """, "/group duplicate-member"),
        ["an outlet that nobody knows"] = Pick(""" "outlet": "far-stores" """, "/outlet unknown-outlet"),
        ["wrong units and a wrong member"] = new(
            "POST /v1/predictions?units=imperial&precision=some&lang=en",
            """{ "machine": "valley-two-seater", "engine": 3 }""",
            ["units unknown-word", "precision unknown-word", "lang unknown-parameter", "/engine unknown-member"]),

        ["numbers to explain that no prediction has"] = new(
            "POST /v1/predictions",
            """{ "machine": "valley-two-seater", "ratioPoints": 3, "explain": ["upshiftRpm/4", 3, "upshiftRpm/3"] }""",
            ["/explain/0 unknown-word", "/explain/1 wrong-type"]),
        ["more numbers to explain than one answer holds"] = new(
            "POST /v1/predictions",
            """
            {
              "machine": "valley-two-seater",
              "explain": ["upshiftRpm/1", "upshiftRpm/2", "upshiftRpm/3", "upshiftRpm/4", "upshiftRpm/5",
                "upshiftRpm/6", "upshiftRpm/7", "upshiftRpm/8", "upshiftRpm/9"]
            }
            """,
            ["/explain out-of-range"]),

        // What shall not be proposed.
        ["exclude as text"] = Pick(""" "exclude": "hx-40" """, "/exclude wrong-type"),
        ["exclude by number and null"] = Pick(
            """ "exclude": [3, "hx-40", null] """, "/exclude/0 wrong-type", "/exclude/2 wrong-type"),
        ["exclude of a part that is not there"] = Pick(
            """ "exclude": ["hx-40", "none-such"] """, "/exclude/1 unknown-part"),
        ["exclude of a machine"] = Pick(""" "exclude": ["valley-two-seater"] """, "/exclude/0 unknown-part"),
        ["exclude of a belt"] = Pick(""" "exclude": ["belt-992", "hx-40"] """, "/exclude/0 not-chosen"),
        ["exclude of what is kept"] = Pick(
            """ "exclude": ["hx-40", "fw-valley-46"], "keep": ["flyweight"] """, "/exclude contradiction"),
        ["exclude of more than anyone means"] = Pick($"\"exclude\": [{TooManyIds}]", "/exclude out-of-range"),

        // Stock, price, fit, order.
        ["stock by a word"] = Pick(
            """ "inStockOnly": "yes", "outlet": "quay-stores" """, "/inStockOnly wrong-type"),
        ["stock of no outlet"] = Pick(""" "inStockOnly": true """, "/outlet outlet-needed"),
        ["a ceiling of no outlet"] = Pick(""" "priceCeilingMinor": 5000 """, "/outlet outlet-needed"),
        ["a ceiling below nothing"] = Pick(
            """ "priceCeilingMinor": -1, "outlet": "quay-stores" """, "/priceCeilingMinor out-of-range"),
        ["a ceiling in parts of a cent"] = Pick(
            """ "priceCeilingMinor": 99.5, "outlet": "quay-stores" """, "/priceCeilingMinor out-of-range"),
        ["a ceiling with its currency"] = Pick(
            """ "priceCeilingMinor": "EUR 50", "outlet": "quay-stores" """, "/priceCeilingMinor wrong-type"),
        ["a ceiling beyond all money"] = Pick(
            """ "priceCeilingMinor": 1e400, "outlet": "quay-stores" """, "/priceCeilingMinor out-of-range"),
        ["a demand by number"] = Pick(""" "demandChecked": 1 """, "/demandChecked wrong-type"),
        ["a group of null"] = Pick(""" "group": null """, "/group wrong-type"),
        ["an order by price"] = Pick(""" "rankBy": "price" """, "/rankBy unknown-word"),
        ["an order by another case"] = Pick(""" "rankBy": "LeastWork" """, "/rankBy unknown-word"),
        ["an order by list"] = Pick(""" "rankBy": ["miss"] """, "/rankBy wrong-type"),
        ["an air law by another case"] = Pick(""" "airLaw": "ISO1585" """, "/airLaw unknown-word"),
        ["no answers"] = Pick(""" "count": 0 """, "/count out-of-range"),
        ["more answers than are given"] = Pick(
            """ "count": 51, "ratioPoints": 16 """, "/count out-of-range", "/ratioPoints out-of-range"),
        ["a slot that is none"] = Pick(
            """ "keep": ["belt", "hole", 2] """, "/keep/0 unknown-word", "/keep/2 wrong-type"),
        ["weights that are not shares"] = Pick(""" "weights": { "engagement": 3, "shift": 7 } """,
            "/weights/engagement out-of-range", "/weights/shift out-of-range"),
        ["weights of more than one"] = Pick(
            """ "weights": { "engagement": 0.5, "shift": 0.6 } """, "/weights weights-sum"),
        ["tolerances of nothing"] = Pick(""" "tolerances": { "engagementRpm": 0, "shiftRpm": "wide" } """,
            "/tolerances/engagementRpm out-of-range", "/tolerances/shiftRpm wrong-type"),

        // Changes against what is fitted.
        ["a change and an rpm"] = Target(
            "valley-two-seater", """ "engagementRpm": 2200, "engagementChangeRpm": 100, "shiftRpm": 7900, "shiftChangeRpm": -50 """,
            "/targets/engagementChangeRpm contradiction", "/targets/shiftChangeRpm contradiction"),
        ["a change beyond anyone's clutch"] = Target(
            "valley-two-seater", """ "engagementChangeRpm": -5001, "shiftChangeRpm": 1e400 """,
            "/targets/engagementChangeRpm out-of-range", "/targets/shiftChangeRpm out-of-range"),
        ["a change in words"] = Target(
            "valley-two-seater", """ "engagementChangeRpm": "+100 rpm", "shiftChangeRpm": null """,
            "/targets/engagementChangeRpm wrong-type", "/targets/shiftChangeRpm wrong-type"),
        ["a change of an engagement that is not by belt"] = Target(
            "harbour-scooter", """ "engagementChangeRpm": 100, "shiftChangeRpm": 0 """,
            "/targets/engagementChangeRpm engagement-not-by-belt"),
        ["an rpm with every run left aside"] = Pick(""" "anchor": false """, "/baseline baseline-needed"),
        ["a run that a pick leaves aside"] = new(
            "POST /v1/picks",
            """
            {
              "machine": "valley-two-seater", "targets": { "engagementChangeRpm": 0, "shiftChangeRpm": 0 }, "anchor": false,
              "baseline": { "engagementRpm": 2000, "shiftRpm": 7900 }
            }
            """,
            ["/baseline contradiction"]),
        ["a launch with every run left aside"] = new(
            "POST /v1/picks",
            """
            {
              "machine": "valley-two-seater", "targets": { "engagementChangeRpm": 0, "shiftChangeRpm": 0 }, "anchor": false,
              "launchRpm": 1500
            }
            """,
            ["/launchRpm baseline-needed"]),

        // Targets.
        ["no target"] = Target("valley-two-seater", "", "/targets/shiftRpm missing-member"),
        ["no goal but an engagement"] = Target(
            "valley-two-seater", "\"engagementRpm\": 2200", "/targets/shiftRpm missing-member"),
        ["an engagement of null"] = Target(
            "valley-two-seater", """ "engagementRpm": null, "shiftRpm": 7900 """,
            "/targets/engagementRpm wrong-type"),
        ["no engagement where the belt starts"] = Target(
            "valley-two-seater", "\"shiftRpm\": 7900", "/targets/engagementRpm engagement-needed"),
        ["an engagement where it does not"] = Target(
            "harbour-scooter", """ "engagementRpm": 2200, "shiftRpm": 7700 """,
            "/targets/engagementRpm engagement-not-by-belt"),
        ["a margin from no launch rpm"] = Pick(""" "launchMarginRpm": 200 """, "/launchRpm missing-member"),
        ["a launch rpm where the belt does not start"] = new(
            "POST /v1/picks",
            """{ "machine": "harbour-scooter", "targets": { "shiftRpm": 7700 }, "launchRpm": 2000 }""",
            ["/launchRpm engagement-not-by-belt"]),
        ["weights and a tolerance of an engagement where the belt does not start"] = new(
            "POST /v1/picks",
            """
            { "machine": "harbour-scooter", "targets": { "shiftRpm": 7700 }, "tolerances": { "engagementRpm": 50 },
              "weights": { "engagement": 0.5, "shift": 0.5 } }
            """,
            ["/tolerances/engagementRpm engagement-not-by-belt", "/weights engagement-not-by-belt"]),
        ["a flat target and a curve"] = Target(
            "valley-two-seater",
            """ "engagementRpm": 2200, "shiftRpm": 7900, "shiftCurve": [{ "ratio": 1, "rpm": 7900 }] """,
            "/targets/shiftCurve contradiction"),
        ["every goal at once"] = Target(
            "valley-two-seater",
            """
            "engagementRpm": 2200, "shiftRpm": 7900, "shiftCurve": [{ "ratio": 1, "rpm": 7900 }],
            "speedCurve": [{ "speed": "40 km/h", "rpm": 7900 }], "peakPower": true
            """,
            "/targets/shiftCurve contradiction", "/targets/speedCurve contradiction",
            "/targets/peakPower contradiction"),
        ["peak power that is not wanted"] = Target(
            "valley-two-seater", """ "engagementRpm": 2200, "peakPower": false """,
            "/targets/peakPower out-of-range"),
        ["peak power by a word"] = Target(
            "valley-two-seater", """ "engagementRpm": 2200, "peakPower": "yes" """,
            "/targets/peakPower wrong-type"),
        ["peak power beside a goal"] = Target(
            "valley-two-seater", """ "engagementRpm": 2200, "shiftRpm": 7900, "peakPower": true """,
            "/targets/peakPower contradiction"),
        ["a curve of no points"] = Target(
            "canyon-racer", """ "engagementRpm": 2150, "speedCurve": [] """, "/targets/speedCurve out-of-range"),
        ["a curve of too many points"] = Target(
            "canyon-racer", $"\"engagementRpm\": 2150, \"speedCurve\": [{TooManySpeeds}]",
            "/targets/speedCurve out-of-range"),
        ["a curve that is a number"] = Target(
            "canyon-racer", """ "engagementRpm": 2150, "speedCurve": 8000 """, "/targets/speedCurve wrong-type"),
        ["points of nothing and of numbers"] = Target(
            "canyon-racer", """ "engagementRpm": 2150, "speedCurve": [{}, 8000] """,
            "/targets/speedCurve/0/rpm missing-member", "/targets/speedCurve/0/speed missing-member",
            "/targets/speedCurve/1 wrong-type"),
        ["a point over ratio among speeds"] = Target(
            "canyon-racer", """ "engagementRpm": 2150, "speedCurve": [{ "ratio": 1, "rpm": 8000 }] """,
            "/targets/speedCurve/0/speed missing-member", "/targets/speedCurve/0/ratio unknown-member"),
        ["one speed in two units"] = Target(
            "canyon-racer",
            """ "engagementRpm": 2150, "speedCurve": [{ "speed": "36 km/h", "rpm": 8000 }, { "speed": "10 m/s", "rpm": 8100 }] """,
            "/targets/speedCurve/1/speed speed-twice"),
        ["one ratio twice"] = Target(
            "canyon-racer",
            """ "engagementRpm": 2150, "shiftCurve": [{ "ratio": 1, "rpm": 8000 }, { "ratio": 1.0, "rpm": 8100 }] """,
            "/targets/shiftCurve/1/ratio ratio-twice"),
        ["a line over speed that is met more than once"] = Target(
            "canyon-racer",
            """ "engagementRpm": 2150, "speedCurve": [{ "speed": "30 km/h", "rpm": 3000 }, { "speed": "32 km/h", "rpm": 9000 }] """,
            "/targets/speedCurve target-unclear"),

        // Sets.
        ["a step that the ramp has not"] = Prediction(
            "meadow-carrier", """ "parts": { "adjusterStep": "9" } """,
            "/parts/adjusterStep unknown-adjuster-step"),
        ["a step by number"] = Prediction(
            "meadow-carrier", """ "parts": { "adjusterStep": 3 } """, "/parts/adjusterStep wrong-type"),
        ["a step of an arm"] = Prediction(
            "valley-two-seater", """ "parts": { "adjusterStep": "3" } """,
            "/parts/adjusterStep unknown-adjuster-step"),
        ["another ramp without its step"] = Prediction(
            "meadow-carrier", """ "parts": { "flyweight": "fw-meadow-36" } """,
            "/parts/adjusterStep unknown-adjuster-step"),
        ["a pin in an arm"] = Prediction(
            "valley-two-seater", """ "parts": { "stationMasses": { "pin": "6 g" } } """,
            "/parts/stationMasses/pin station-mass"),
        ["a pin that the ramp does not take"] = Prediction(
            "meadow-carrier", """ "parts": { "stationMasses": { "pin": "5.5 g" } } """,
            "/parts/stationMasses/pin station-mass"),
        ["shims by number"] = Prediction(
            "canyon-racer", """ "parts": { "shims": 2 } """, "/parts/shims wrong-type"),
        ["shims of no count"] = Prediction(
            "canyon-racer", """ "parts": { "shims": {} } """, "/parts/shims/count missing-member"),
        ["shims of no kind"] = Prediction(
            "canyon-racer", """ "parts": { "shims": { "count": 1 } } """, "/parts/shims/shim missing-member"),
        ["shims that are a spring"] = Prediction(
            "canyon-racer", """ "parts": { "shims": { "shim": "ds-96-201", "count": 1 } } """,
            "/parts/shims/shim wrong-kind"),
        ["shims that are not there"] = Prediction(
            "canyon-racer", """ "parts": { "shims": { "shim": "none-such", "count": 1 } } """,
            "/parts/shims/shim unknown-part"),
        ["more shims than are counted"] = Prediction(
            "canyon-racer", """ "parts": { "shims": { "shim": "sh-66-1.0", "count": 11 } } """,
            "/parts/shims/count out-of-range"),
        ["half a shim"] = Prediction(
            "canyon-racer", """ "parts": { "shims": { "shim": "sh-66-1.0", "count": 0.5 } } """,
            "/parts/shims/count out-of-range"),
        ["more shims than the clutch takes"] = Prediction(
            "canyon-racer", """ "parts": { "shims": { "shim": "sh-66-1.0", "count": 3 } } """,
            "/parts/shims/count too-many-shims"),
        ["a shim where there is no room"] = Prediction(
            "valley-two-seater", """ "parts": { "shims": { "shim": "sh-66-1.0", "count": 1 } } """,
            "/parts/shims/count too-many-shims"),
        ["a pair that is not stamped"] = Prediction(
            "ridge-climber", """ "parts": { "hole": "4-A" } """, "/parts/hole unknown-hole"),
        ["one hole of a pair"] = Prediction(
            "ridge-climber", """ "parts": { "hole": "3" } """, "/parts/hole unknown-hole"),
        ["a setting between two"] = Prediction(
            "canyon-racer", """ "parts": { "hole": "45" } """, "/parts/hole unknown-hole"),
        ["a hole where nothing twists"] = Prediction(
            "harbour-scooter", """ "parts": { "hole": "1" } """, "/parts/hole unknown-hole"),
        ["parts in each other's place"] = Prediction(
            "valley-two-seater",
            """ "parts": { "driveSpring": "dv-9.0-9.0", "drivenSpring": "ds-96-201", "helix": "belt-992" } """,
            "/parts/driveSpring wrong-kind", "/parts/drivenSpring wrong-kind", "/parts/helix wrong-kind"),
        ["a kit in place of a spring"] = Prediction(
            "valley-two-seater", """ "parts": { "driveSpring": "kit-valley-high" } """,
            "/parts/driveSpring wrong-kind"),
        ["a spring too short to be computed"] = Prediction(
            "valley-two-seater", """ "parts": { "driveSpring": "ds-11-21" } """,
            "/parts/driveSpring part-unusable"),
        ["an arm that is only weighed against another"] = Prediction(
            "valley-two-seater", """ "parts": { "flyweight": "fw-canyon-002" } """,
            "/parts/flyweight part-unusable"),
        ["a kept part that does not fit"] = Pick(
            """ "fitted": { "drivenSpring": "dv-10.3-6.4" }, "keep": ["drivenSpring", "hole", "helix"] """,
            "/keep kept-part-does-not-fit"),

        // Measured runs.
        ["a run of nothing"] = Prediction(
            "valley-two-seater", """ "baseline": {} """, "/baseline/shiftRpm missing-member"),
        ["a run of two shift speeds"] = Prediction(
            "valley-two-seater",
            """ "baseline": { "engagementRpm": 2000, "shiftRpm": 7900, "shiftCurve": [{ "ratio": 1, "rpm": 7900 }] } """,
            "/baseline/shiftCurve contradiction"),
        ["a run by vehicle speed"] = Prediction(
            "valley-two-seater",
            """ "baseline": { "engagementRpm": 2000, "shiftRpm": 7900, "speedCurve": [] } """,
            "/baseline/speedCurve unknown-member"),
        ["a run that no engine makes"] = Prediction(
            "valley-two-seater", """ "baseline": { "engagementRpm": 8900, "shiftRpm": 200 } """,
            "/baseline/shiftRpm baseline-unusable"),
        ["a run without its engagement"] = Prediction(
            "valley-two-seater", """ "baseline": { "shiftRpm": 7900 } """,
            "/baseline/engagementRpm engagement-needed"),
        ["a run with an engagement that is not the belt's"] = Prediction(
            "harbour-scooter", """ "baseline": { "engagementRpm": 3000, "shiftRpm": 7700 } """,
            "/baseline/engagementRpm engagement-not-by-belt"),
        ["a run with a hole that is not there"] = Prediction(
            "valley-two-seater",
            """ "baseline": { "parts": { "hole": "9" }, "engagementRpm": 2000, "shiftRpm": 7900 } """,
            "/baseline/parts/hole unknown-hole"),
        ["a run that is left aside"] = Prediction(
            "valley-two-seater",
            """ "anchor": false, "baseline": { "engagementRpm": 2000, "shiftRpm": 7900 } """,
            "/baseline contradiction"),
        ["an anchor by a word"] = Prediction("valley-two-seater", """ "anchor": "no" """, "/anchor wrong-type"),
    };
}
