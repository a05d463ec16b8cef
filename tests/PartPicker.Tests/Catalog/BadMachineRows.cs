using System.Text.RegularExpressions;
using static PartPicker.Catalog.FindingCodes;
using static PartPicker.Tests.Catalog.BadRow;

namespace PartPicker.Tests.Catalog;

/// <summary>What can be wrong in machine files: the JSON pointer, the value as it stands, and a piece of the remedy.</summary>
internal static class BadMachineRows
{
    private const string File = TestCatalog.Machine;
    private const string Gearings =
        "\"gearings\": [{ \"id\": \"ge-1\", \"origin\": \"drawing\", \"tyreRadius\": \"13.4 in\", \"finalDrive\": 11 }]";
    private const string FlatRun = """{ "engagementRpm": 1970, "shiftRpm": 7940 }""";

    private const string TorqueCurve =
        "\"torqueCurve\": { \"value\": [[1200, \"38 N·m\"], [6800, \"82 N·m\"], [9200, \"58 N·m\"]], \"origin\": \"drawing\" },";

    public static readonly Dictionary<string, BadRow> Cases = new()
    {
        // The file as JSON.
        ["a comment"] = Edit(File, "\"name\": \"Twin\"", "/* two */ \"name\": \"Twin\"", 3, null, null, BadJson, "no comments"),
        ["a trailing comma"] = Edit(File, "\"idleRpm\": 1200", "\"idleRpm\": 1200,", 6, null, null, BadJson, "trailing comma"),
        ["a text cut in half"] = new(c => c.Set(File, c.Text(File)[..300]), File, 9, null, null, BadJson, "no JSON"),
        ["an empty machine file"] = new(c => c.Set(File, ""), File, 1, null, null, BadJson, "no JSON"),
        ["half a surrogate pair"] = Edit(File, "Twin", "Tw\\ud800n", 3, null, null, BadJson, "surrogate"),
        ["half a surrogate pair in a name"] = Edit(File, "\"armCount\"", "\"armCount\\udc00\"", 11, null, null, BadJson, "surrogate"),
        ["lists in lists without end"] = Edit(File, "0.36", new string('[', 20) + new string(']', 20), 19, null, null, BadJson, "nested deeper"),
        ["a file that is a list"] = new(c => c.Set("machines/list.json", "[1]"), "machines/list.json", null, "", "[1]", WrongShape, "object"),
        ["a list of an unknown name"] = Edit(File, "\"belts\"", "\"straps\"", null, "/straps", null, UnknownMember, "belts"),
        ["a list that stands twice"] = Edit(File, "\"engines\": [", "\"engines\": [], \"engines\": [", null, "/engines", null, DuplicateMember, "Leave one out"),
        ["a list that is an object"] = Machine(Gearings, "\"gearings\": {}", "/gearings", "{}", WrongShape, "list"),
        ["an item that is a text"] = Edit(File, "\"belts\": [{", "\"belts\": [\"be-9\", {", null, "/belts/0", "be-9", WrongShape, "object"),

        // What cannot run.
        ["a belt too short for its shafts"] = Machine("\"pitchLength\": \"992 mm\"", "\"pitchLength\": \"700 mm\"", "/machines/0/centreDistance", "270 mm", BeltDoesNotRun, "pitch length 700.0 mm (27.5591 in)"),
        ["a belt too long for its shafts"] = Machine("\"pitchLength\": \"992 mm\"", "\"pitchLength\": \"1700 mm\"", "/machines/0/centreDistance", "270 mm", BeltDoesNotRun, "too short or too long"),
        ["a fitted mass beyond its station's limit"] = Hauler("{ \"tip\": \"5 g\" }", "{ \"tip\": \"9 g\" }", "/machines/1/fitted/stationMasses/tip", "9 g", TooHeavy, "may carry 8 g"),
        ["a fitted mass that its station does not list"] = Hauler("{ \"tip\": \"5 g\" }", "{ \"tip\": \"5.5 g\" }", "/machines/1/fitted/stationMasses/tip", "5.5 g", UnknownMass, "Name one of these"),
        ["a fitted arm that stands still before full shift of its clutch"] = new(
            c => c.Replace(File, "\"fullShiftTravel\": \"24.5 mm\"", "\"fullShiftTravel\": \"26.5 mm\"")
                .Append(TestCatalog.Flyweights, "fw-late,,55,,0 mm: 40 mm; 12 mm: 52 mm; 25 mm: 64 mm; 28 mm: 64 mm,,,,,,,,,,,\n")
                .Replace(File, "\"flyweight\": \"fw-plain\"", "\"flyweight\": \"fw-late\""),
            File, null, "/machines/0/baselines/1/parts/flyweight", "fw-late", WrongTrend, "On the clutch dr-1 it cannot be computed. The radius does not grow"),
        ["a path of an arm profile that stands still"] = Hauler("[[\"0 mm\", \"40 mm\"], [\"28 mm\", \"66 mm\"]], \"tipCurve\"", "[[\"0 mm\", \"40 mm\"], [\"28 mm\", \"40 mm\"]], \"tipCurve\"", "/armProfiles/0/radiusCurve", null, WrongTrend, "does not grow with travel"),

        // Members.
        ["a member that no kind has"] = Machine("\"armCount\"", "\"wingCount\": 3, \"armCount\"", "/driveClutches/0/wingCount", "3", UnknownMember, "armCount"),
        ["a member with a slash and a tilde"] = Machine("\"armCount\"", "\"a/b~c\": 3, \"armCount\"", "/driveClutches/0/a~1b~0c", "3", UnknownMember, "armCount"),
        ["a member that stands twice"] = Machine("\"armCount\"", "\"armCount\": 4, \"armCount\"", "/driveClutches/0/armCount", "3", DuplicateMember, "Leave one out"),
        ["a needed member that is missing"] = Machine("\"revLimitRpm\": 9000, \"idleRpm\": 1200", "\"revLimitRpm\": 9000", "/engines/0/idleRpm", null, MissingValue, "idle"),
        ["an item without an origin"] = Machine("\"id\": \"ge-1\", \"origin\": \"drawing\"", "\"id\": \"ge-1\"", "/gearings/0/origin", null, MissingValue, "measured, drawing, brochure, classDefault"),
        ["an origin that is no word of the list"] = Machine("\"id\": \"ge-1\", \"origin\": \"drawing\"", "\"id\": \"ge-1\", \"origin\": \"guess\"", "/gearings/0/origin", "guess", BadChoice, "classDefault"),
        ["an origin that is a number"] = Machine("\"id\": \"ge-1\", \"origin\": \"drawing\"", "\"id\": \"ge-1\", \"origin\": 1", "/gearings/0/origin", "1", WrongShape, "classDefault"),
        ["a wrapped value without its origin"] = Machine("\"13.4 in\"", "{ \"value\": \"13.4 in\" }", "/gearings/0/tyreRadius/origin", null, MissingValue, "origin"),
        ["a wrapper without a value"] = Machine("\"13.4 in\"", "{ \"origin\": \"measured\" }", "/gearings/0/tyreRadius/value", null, MissingValue, "Rolling radius"),
        ["a wrapper with something else in it"] = Machine("\"13.4 in\"", "{ \"value\": \"13.4 in\", \"origin\": \"measured\", \"by\": 3 }", "/gearings/0/tyreRadius/by", "3", UnknownMember, "value, origin"),
        ["a wrapped id"] = Machine("\"id\": \"ge-1\"", "\"id\": { \"value\": \"ge-1\", \"origin\": \"measured\" }", "/gearings/0/id", """{ "value": "ge-1", "origin": "measured" }""", WrongShape, "text"),

        // One value.
        ["a bare number where a unit is needed"] = Machine("\"3 mm\"", "3", "/driveClutches/0/contactTravel", "3", WrongShape, "its unit"),
        ["a text where a number is needed"] = Machine("\"armCount\": 3", "\"armCount\": \"3\"", "/driveClutches/0/armCount", "3", WrongShape, "bare number"),
        ["a null"] = Machine("\"armCount\": 3", "\"armCount\": null", "/driveClutches/0/armCount", "null", WrongShape, "bare number"),
        ["a count with decimals"] = Machine("\"armCount\": 3", "\"armCount\": 3.5", "/driveClutches/0/armCount", "3.5", BadNumber, "whole number"),
        ["a count out of range"] = Machine("\"armCount\": 3", "\"armCount\": 0", "/driveClutches/0/armCount", "0", OutOfRange, "1 to 24"),
        ["a count beyond all numbers"] = Machine("\"armCount\": 3", "\"armCount\": 99999999999999999999", "/driveClutches/0/armCount", "99999999999999999999", BadNumber, "whole number"),
        ["a number beyond all numbers"] = Machine("\"finalDrive\": 11", "\"finalDrive\": 1e999", "/gearings/0/finalDrive", "1e999", BadNumber, "bare number"),
        ["a number out of range"] = Machine("0.95", "95", "/belts/0/efficiency", "95", OutOfRange, "0.5 to 1"),
        ["a length out of range"] = Machine("\"270 mm\"", "\"270 cm\"", "/machines/0/centreDistance", "270 cm", OutOfRange, "50 mm to 2000 mm"),
        ["a wrapped length out of range"] = Machine("\"34 mm\"", "\"34 in\"", "/driveClutches/0/contactPitchRadius/value", "34 in", OutOfRange, "10 mm to 150 mm"),
        ["a length with a decimal comma"] = Machine("\"24.5 mm\"", "\"24,5 mm\"", "/driveClutches/0/fullShiftTravel", "24,5 mm", DecimalComma, "point"),
        ["a length in newtons"] = Machine("\"24.5 mm\"", "\"24.5 N\"", "/driveClutches/0/fullShiftTravel", "24.5 N", BadQuantity, "length was expected"),
        ["a choice that is no word of the list"] = Machine("\"locked\"", "\"open\"", "/driveClutches/0/thrustLaw", "open", BadChoice, "twoArc, locked"),
        ["an empty name"] = Machine("\"Twin\"", "\"\"", "/engines/0/name", "", BadText, "1 to 120"),
        ["an id with a slash"] = Machine("\"id\": \"ge-1\"", "\"id\": \"ge/1\"", "/gearings/0/id", "ge/1", BadId, "letters a to z"),

        // Curves and holes.
        ["a curve that is a text"] = Machine("[[1200, \"38 N·m\"], [6800, \"82 N·m\"], [9200, \"58 N·m\"]]", "\"flat\"", "/engines/0/torqueCurve/value", "flat", WrongShape, "pairs"),
        ["a point of one number"] = Machine("[6800, \"82 N·m\"]", "[6800]", "/engines/0/torqueCurve/value/1", "[6800]", BadPoint, "pair"),
        ["a point that is an object"] = Machine("[6800, \"82 N·m\"]", "{}", "/engines/0/torqueCurve/value/1", "{}", WrongShape, "pair"),
        ["a point whose torque has no unit"] = Machine("[6800, \"82 N·m\"]", "[6800, 82]", "/engines/0/torqueCurve/value/1/1", "82", WrongShape, "its unit"),
        ["a point that steps back"] = Machine("[6800, \"82 N·m\"]", "[1000, \"82 N·m\"]", "/engines/0/torqueCurve/value/1", "1000: 82 N·m", NotRising, "above"),
        ["a torque out of range"] = Machine("\"82 N·m\"", "\"82 kN·m\"", "/engines/0/torqueCurve/value/1", "6800: 82 kN·m", OutOfRange, "0 N·m to 2000 N·m"),
        ["a curve of one pair"] = Machine("[[1200, \"38 N·m\"], [6800, \"82 N·m\"], [9200, \"58 N·m\"]]", "[[1200, \"38 N·m\"]]", "/engines/0/torqueCurve/value", "[[1200, \"38 N·m\"]]", TooFewPoints, "2 to 200"),
        ["no holes"] = Machine("{ \"1\": 50, \"2\": 70 }", "{}", "/drivenClutches/0/holes/value", "{}", TooFewPoints, "1 to 200"),
        ["a hole that stands twice"] = Machine("{ \"1\": 50, \"2\": 70 }", "{ \"1\": 50, \"2\": 70, \"1\": 90 }", "/drivenClutches/0/holes/value/1", "90", DuplicateMember, "Leave one out"),
        ["a hole with a unit"] = Machine("\"1\": 50", "\"1\": \"50 deg\"", "/drivenClutches/0/holes/value/1", "50 deg", WrongShape, "bare number"),
        ["a hole twisted too far"] = Machine("\"1\": 50", "\"1\": 5000", "/drivenClutches/0/holes/value/1", "1: 5000", OutOfRange, "0 to 720"),
        ["a hole without a name"] = Machine("\"1\": 50, \"2\": 70", "\"1\": 50, \"2\": 70, \"\": 90", "/drivenClutches/0/holes/value/", ": 90", BadText, "1 to 40"),

        ["a pair of holes without one of them"] = Hauler("\"helix\": \"A\", ", "", "/drivenClutches/2/holes/0/helix", null, MissingValue, "sheave, helix, twistDeg"),
        ["a pair of holes that stands twice"] = Hauler("\"helix\": \"B\"", "\"helix\": \"A\"", "/drivenClutches/2/holes/1", null, DuplicateValue, "2-A stands twice"),
        ["a pair of holes with a depth"] = Hauler("\"helix\": \"B\"", "\"helix\": \"B\", \"depth\": 3", "/drivenClutches/2/holes/1/depth", "3", UnknownMember, "sheave, helix, twistDeg"),
        ["a pair of holes that is a text"] = Hauler("{ \"sheave\": \"2\", \"helix\": \"A\", \"twistDeg\": 70 }", "\"2-A\"", "/drivenClutches/2/holes/0", "2-A", WrongShape, "sheave, helix, twistDeg"),
        ["a pair of holes by number"] = Hauler("\"sheave\": \"2\"", "\"sheave\": 2", "/drivenClutches/2/holes/0/sheave", "2", WrongShape, "text"),
        ["a pair of holes without a stamp"] = Hauler("\"sheave\": \"2\"", "\"sheave\": \"\"", "/drivenClutches/2/holes/0", null, BadText, "1 to 40"),
        ["a pair of holes twisted too far"] = Hauler("85.5", "850", "/drivenClutches/2/holes/1", null, OutOfRange, "0 to 720"),
        ["holes that are a text"] = Machine("{ \"1\": 50, \"2\": 70 }", "\"1: 50\"", "/drivenClutches/0/holes/value", "1: 50", WrongShape, "or a list of"),
        ["steps that are a list"] = new(
            c => c.Set(TestCatalog.Haulers, Regex.Replace(c.Text(TestCatalog.Haulers), "\"adjusterCurves\": \\{[^{}]*\\}", "\"adjusterCurves\": []")),
            TestCatalog.Haulers, null, "/flyweights/0/adjusterCurves", "[]", WrongShape, "by the name of the step"),
        ["a step that is a number"] = Hauler("\"1\": [[\"0 mm\", \"40 mm\"], [\"28 mm\", \"64 mm\"]]", "\"1\": 3", "/flyweights/0/adjusterCurves/1", "3", WrongShape, "pairs [x, y]"),
        ["a step of one point"] = Hauler("\"1\": [[\"0 mm\", \"40 mm\"], [\"28 mm\", \"64 mm\"]]", "\"1\": [[\"0 mm\", \"40 mm\"]]", "/flyweights/0/adjusterCurves/1", null, TooFewPoints, "2 to 200"),

        // Kits and listed clutches.
        ["a line of a kit without its part"] = Hauler("{ \"part\": \"ds-old\" }", "{ \"packs\": 3 }", "/kits/0/contents/0/part", null, MissingValue, "part, packs"),
        ["a line of a kit that is an id"] = Hauler("{ \"part\": \"ds-old\" }", "\"ds-old\"", "/kits/0/contents/0", "ds-old", WrongShape, "part, packs"),
        ["packs that are a text"] = Hauler("\"packs\": 2", "\"packs\": \"2\"", "/kits/0/contents/1/packs", "2", WrongShape, "bare number"),
        ["half a pack"] = Hauler("\"packs\": 2", "\"packs\": 0.5", "/kits/0/contents/1", null, BadNumber, "In packs"),
        ["a kit of an empty list"] = Hauler("[{ \"part\": \"ds-old\" }, { \"part\": \"be-2\", \"packs\": 2 }]", "[]", "/kits/0/contents", "[]", TooFewPoints, "1 to 200"),
        ["a kit of a part that is nowhere"] = Hauler("\"part\": \"ds-old\"", "\"part\": \"ds-lost\"", "/kits/0/contents", null, UnknownReference, "the id ds-lost"),
        ["a listed clutch without its id"] = Hauler("\"clutch\": \"dn-far\", ", "", "/kits/0/fitsClutches/1/clutch", null, MissingValue, "clutch, fromYear, toYear"),
        ["listed clutches with an origin"] = Hauler("[{ \"clutch\": \"dr-2\", \"fromYear\": 2018, \"toYear\": 2023 }, { \"clutch\": \"dn-far\", \"toYear\": 2016 }]", "{ \"value\": [], \"origin\": \"drawing\" }", "/kits/0/fitsClutches", null, WrongShape, "list of objects"),
        ["a listed clutch from a year of words"] = Hauler("\"fromYear\": 2018", "\"fromYear\": \"2018\"", "/kits/0/fitsClutches/0/fromYear", "2018", WrongShape, "bare number"),

        // Model-years.
        ["a year out of range"] = Hauler("\"fromYear\": 2012", "\"fromYear\": 212", "/armProfiles/0/fromYear", "212", OutOfRange, "1950 to 2100"),
        ["a year with an origin"] = Hauler("\"fromYear\": 2012", "\"fromYear\": { \"value\": 2012, \"origin\": \"drawing\" }", "/armProfiles/0/fromYear", null, WrongShape, "bare number"),
        ["a first year after the last"] = Hauler("\"fromYear\": 2012", "\"fromYear\": 2012, \"toYear\": 2011", "/armProfiles/0/fromYear", "2012", NotBelow, "must not be above toYear, which is 2011"),
        ["a machine before its clutch"] = Hauler("\"fromYear\": 2016, \"toYear\": 2020", "\"fromYear\": 2015, \"toYear\": 2020", "/machines/0/fromYear", "2015", OutsideYears, "driveClutch dr-2 covers 2016-2024"),
        ["a machine after its clutch"] = Hauler("\"toYear\": 2020", "\"toYear\": 2025", "/machines/0/toYear", "2025", OutsideYears, "driveClutch dr-2 covers 2016-2024"),

        // Values together.
        ["holes and an adjuster"] = Hauler("\"adjusterFromDeg\": 40", "\"holes\": { \"1\": 40 }, \"adjusterFromDeg\": 40", "/drivenClutches/0/adjusterFromDeg", "40", EitherOr, "not both"),
        ["neither holes nor an adjuster"] = Hauler("\"adjusterFromDeg\": 40, \"adjusterToDeg\": 80, \"adjusterStepDeg\": 10,", "", "/drivenClutches/0", null, NotKnown, "or the family compressionOnly"),
        ["an adjuster without its step"] = Hauler(", \"adjusterStepDeg\": 10", "", "/drivenClutches/0/adjusterStepDeg", null, HalfGiven, "adjusterStepDeg is left out"),
        ["an adjuster whose ends are exchanged"] = Hauler("\"adjusterFromDeg\": 40", "\"adjusterFromDeg\": 90", "/drivenClutches/0/adjusterFromDeg", "90", NotBelow, "adjusterToDeg, which is 80"),
        ["an adjuster of 201 settings"] = Hauler("\"adjusterToDeg\": 80, \"adjusterStepDeg\": 10", "\"adjusterToDeg\": 240, \"adjusterStepDeg\": 1", "/drivenClutches/0/adjusterStepDeg", "1", TooManyPoints, "201 settings; at most 200"),
        ["holes in a clutch that twists nothing"] = Hauler("\"family\": \"compressionOnly\"", "\"holes\": { \"1\": 40 }, \"family\": \"compressionOnly\"", "/drivenClutches/1/holes", null, EitherOr, "twists no spring"),
        ["an adjuster in a clutch that twists nothing"] = Hauler("\"helixMount\": \"splined\"", "\"helixMount\": \"splined\", \"family\": \"compressionOnly\"", "/drivenClutches/0/adjusterFromDeg", "40", EitherOr, "twists no spring"),
        ["an arm profile without its curve"] = Hauler("\"radiusCurve\": [[\"0 mm\", \"40 mm\"], [\"28 mm\", \"66 mm\"]], ", "", "/armProfiles/0/radiusCurve", null, MissingValue, "Radius of gyration"),
        ["a rev limit beyond the torque curve"] = Machine("\"revLimitRpm\": 9000", "\"revLimitRpm\": 9300", "/engines/0/revLimitRpm", "9300", NotBelow, "9200 rpm"),
        ["an engine of peaks and a curve"] = Machine("\"idleRpm\": 1200", Peaks(6000, 80, 8000, 58) + "\"idleRpm\": 1200", "/engines/0/peakTorqueRpm", "6000", EitherOr, "not both"),
        ["an engine of half its peaks"] = Machine("\"idleRpm\": 1200", "\"peakTorqueRpm\": 6000, \"idleRpm\": 1200", "/engines/0/peakTorque", null, HalfGiven, "peakPowerRpm"),
        ["an engine of neither"] = Machine(TorqueCurve, "", "/engines/0", null, NotKnown, "or peakTorqueRpm"),
        ["peaks whose torque would drop at once"] = Machine(TorqueCurve, Peaks(6000, 80, 8000, 45), "/engines/0/peakPower", "45 kW", WrongTrend, "p = 0."),
        ["peaks the wrong way round"] = Machine(TorqueCurve, Peaks(8000, 80, 6000, 45), "/engines/0/peakPower", "45 kW", WrongTrend, "lower rpm"),
        ["peaks of a power that needs more than the torque"] = Machine(TorqueCurve, Peaks(6000, 80, 8000, 75), "/engines/0/peakPower", "75 kW", WrongTrend, "must be above"),
        ["a rev limit at which two peaks say nothing"] = Machine(TorqueCurve, Peaks(3500, 60, 4400, 24), "/engines/0/revLimitRpm", "9000", NotBelow, "8800 rpm"),
        ["an idle above the rev limit"] = Machine("\"idleRpm\": 1200", "\"idleRpm\": 9100", "/engines/0/idleRpm", "9100", NotBelow, "revLimitRpm"),
        ["a contact at full shift"] = Machine("\"contactTravel\": \"3 mm\"", "\"contactTravel\": \"24.5 mm\"", "/driveClutches/0/contactTravel", "24.5 mm", NotBelow, "fullShiftTravel, which is 24.5 mm"),
        ["a post wider than its cup"] = Machine("\"38 mm\"", "\"63 mm\"", "/driveClutches/0/postDiameter", "63 mm", NotBelow, "cupBore"),

        // References.
        ["a piece that is nowhere"] = Machine("\"belt\": \"be-1\"", "\"belt\": \"be-9\"", "/machines/0/belt", "be-9", UnknownReference, "Check the spelling"),
        ["a piece of another kind"] = Machine("\"belt\": \"be-1\"", "\"belt\": \"ge-1\"", "/machines/0/belt", "ge-1", WrongKind, "a belt belongs here"),
        ["an id of a piece and of a part"] = Machine(Gearings, Gearings.Replace("]", ", { \"id\": \"fw-two\", \"origin\": \"drawing\", \"tyreRadius\": \"1 ft\", \"finalDrive\": 9 }]"), "/gearings/1/id", "fw-two", DuplicateId, "flyweights.csv, line 3"),
        ["a fitted part that is nowhere"] = Machine("\"driveSpring\": \"ds-rate\"", "\"driveSpring\": \"ds-lost\"", "/machines/0/fitted/driveSpring", "ds-lost", UnknownReference, "add the item"),
        ["a fitted part of another kind"] = Machine("\"drivenSpring\": \"dv-rate\"", "\"drivenSpring\": \"ds-rate\"", "/machines/0/fitted/drivenSpring", "ds-rate", WrongKind, "a drivenSpring belongs here"),
        ["a fitted hole that is not there"] = Machine("\"hole\": \"2\"", "\"hole\": \"3\"", "/machines/0/fitted/hole", "3", UnknownHole, "1, 2"),
        ["a mass in a station that is not there"] = Machine("\"heel\": \"4 g\"", "\"middle\": \"4 g\"", "/machines/0/fitted/stationMasses/middle", null, UnknownStation, "Leave it out"),
        ["a run with a part that is nowhere"] = Machine("\"driveSpring\": \"ds-loads\"", "\"driveSpring\": \"ds-lost\"", "/machines/0/baselines/1/parts/driveSpring", "ds-lost", UnknownReference, "add the item"),
        ["a run with a hole that is not there"] = Machine("\"hole\": \"1\"", "\"hole\": \"9\"", "/machines/0/baselines/1/parts/hole", "9", UnknownHole, "1, 2"),

        // Sets.
        ["a set without a helix"] = Machine(", \"hole\": \"2\", \"helix\": \"hx-two\"", ", \"hole\": \"2\"", "/machines/0/fitted/helix", null, MissingValue, "every place"),
        ["a set that is a text"] = new(
            c => c.Set(File, Regex.Replace(c.Text(File), "\"parts\": \\{[^{}]*\\}", "\"parts\": \"fitted\"")),
            File, null, "/machines/0/baselines/1/parts", "fitted", WrongShape, "object"),
        ["a hole by number"] = Machine("\"hole\": \"2\"", "\"hole\": 2", "/machines/0/fitted/hole", "2", WrongShape, "quotes"),
        ["a mass without its unit"] = Machine("\"heel\": \"4 g\"", "\"heel\": 4", "/machines/0/fitted/stationMasses/heel", "4", WrongShape, "its unit"),
        ["a mass out of range"] = Machine("\"heel\": \"4 g\"", "\"heel\": \"4 kg\"", "/machines/0/fitted/stationMasses/heel", "4 kg", OutOfRange, "0 g to 100 g"),
        ["a station of an unknown name"] = Machine("\"heel\": \"4 g\"", "\"toe\": \"4 g\"", "/machines/0/fitted/stationMasses/toe", "4 g", UnknownMember, "heel, middle, tip"),
        ["a set id that can be none"] = Machine("\"flyweight\": \"fw-plain\"", "\"flyweight\": \"fw plain\"", "/machines/0/baselines/1/parts/flyweight", "fw plain", BadId, "letters a to z"),

        ["a fitted step that is not there"] = Hauler("\"adjusterStep\": \"2\"", "\"adjusterStep\": \"3\"", "/machines/0/fitted/adjusterStep", "3", UnknownStep, "It has 1, 2"),
        ["a fitted ramp on no step"] = Hauler("\"adjusterStep\": \"2\", ", "", "/machines/0/fitted/adjusterStep", null, MissingValue, "Name the step of the ramp fw-ramp"),
        ["a fitted step of no ramp"] = Hauler("\"flyweight\": \"fw-profile\"", "\"flyweight\": \"fw-profile\", \"adjusterStep\": \"1\"", "/machines/1/fitted/adjusterStep", "1", UnknownStep, "Leave the step out"),
        ["a fitted step by number"] = Hauler("\"adjusterStep\": \"2\"", "\"adjusterStep\": 2", "/machines/0/fitted/adjusterStep", "2", WrongShape, "quotes"),
        ["more shims than the clutch takes"] = Hauler("\"count\": 2", "\"count\": 4", "/machines/0/fitted/shims/count", "4", TooManyShims, "takes 3 shims"),
        ["a shim in a clutch that takes none"] = Hauler("\"flyweight\": \"fw-profile\"", "\"flyweight\": \"fw-profile\", \"shims\": { \"shim\": \"sh-1\", \"count\": 1 }", "/machines/1/fitted/shims/count", "1", TooManyShims, "takes 0 shims"),
        ["no shims"] = Hauler("\"count\": 2", "\"count\": 0", "/machines/0/fitted/shims/count", "0", OutOfRange, "1 to 10"),
        ["shims without their count"] = Hauler(", \"count\": 2", "", "/machines/0/fitted/shims/count", null, MissingValue, "shim, count"),
        ["shims that are an id"] = Hauler("{ \"shim\": \"sh-1\", \"count\": 2 }", "\"sh-1\"", "/machines/0/fitted/shims", "sh-1", WrongShape, "shim, count"),
        ["a shim of an id that can be none"] = Hauler("\"shim\": \"sh-1\"", "\"shim\": \"sh 1\"", "/machines/0/fitted/shims/shim", "sh 1", BadId, "letters a to z"),
        ["a shim that is nowhere"] = Hauler("\"shim\": \"sh-1\"", "\"shim\": \"sh-9\"", "/machines/0/fitted/shims/shim", "sh-9", UnknownReference, "the id sh-9"),
        ["a shim of another kind"] = Hauler("\"shim\": \"sh-1\"", "\"shim\": \"be-2\"", "/machines/0/fitted/shims/shim", "be-2", WrongKind, "a shim belongs here"),
        ["a pin mass on an arm"] = Hauler("{ \"tip\": \"5 g\" }", "{ \"pin\": \"5 g\" }", "/machines/1/fitted/stationMasses/pin", null, UnknownStation, "no pin station"),
        ["a mass in a station that the profile lacks"] = Hauler("{ \"tip\": \"5 g\" }", "{ \"heel\": \"5 g\" }", "/machines/1/fitted/stationMasses/heel", null, UnknownStation, "no heel station"),
        ["a setting that the adjuster lacks"] = Hauler("\"hole\": \"60\"", "\"hole\": \"65\"", "/machines/0/fitted/hole", "65", UnknownHole, "40, 50, 60, 70, 80"),
        ["a hole of a clutch that twists nothing"] = Hauler("\"hole\": \"none\"", "\"hole\": \"1\"", "/machines/1/fitted/hole", "1", UnknownHole, "It has none"),

        // Measured runs.
        ["a run without an engagement once the belt starts the machine"] = Hauler("\"centrifugalClutch\"", "\"belt\"", "/machines/0/baselines/0/engagementRpm", null, MissingValue, "another startDevice than belt"),
        ["a run without an engagement"] = Machine("\"engagementRpm\": 1970, ", "", "/machines/0/baselines/0/engagementRpm", null, MissingValue, "took hold"),
        ["a run without a shift speed"] = Machine(", \"shiftRpm\": 7940", "", "/machines/0/baselines/0", """{ "engagementRpm": 1970 }""", EitherOr, "one of the two"),
        ["a run with both shift speeds"] = Machine("\"shiftRpm\": 7940", "\"shiftRpm\": 7940, \"shiftCurve\": [{ \"ratio\": 1, \"rpm\": 7900 }]", "/machines/0/baselines/0/shiftCurve", """[{ "ratio": 1, "rpm": 7900 }]""", EitherOr, "one of the two"),
        ["a run that is a number"] = Machine(FlatRun, "1970", "/machines/0/baselines/0", "1970", WrongShape, "object"),
        ["runs that are no list"] = new(
            c => c.Set(File, c.Text(File).Replace("\"baselines\": [", "\"baselines\": { \"x\": [").Replace("""
                    ]
                  }]
                """, """
                    ]}
                  }]
                """)),
            File, null, "/machines/0/baselines", null, WrongShape, "list"),
        ["a ratio out of range"] = Machine("\"ratio\": 2.4", "\"ratio\": 24", "/machines/0/baselines/1/shiftCurve/0/ratio", "24", OutOfRange, "0.1 to 10"),
        ["an rpm with a unit"] = Machine("\"rpm\": 7880", "\"rpm\": \"7880 rpm\"", "/machines/0/baselines/1/shiftCurve/0/rpm", "7880 rpm", WrongShape, "bare number"),
        ["a shift point without its rpm"] = Machine("{ \"ratio\": 2.4, \"rpm\": 7880 }", "{ \"ratio\": 2.4 }", "/machines/0/baselines/1/shiftCurve/0/rpm", null, MissingValue, "a ratio and an rpm"),
        ["a ratio that stands twice"] = Machine("\"ratio\": 0.9", "\"ratio\": 2.4", "/machines/0/baselines/1/shiftCurve/1", """{ "ratio": 2.4, "rpm": 8000 }""", DuplicateValue, "Keep one"),
        ["a shift curve of no point"] = Machine("[{ \"ratio\": 2.4, \"rpm\": 7880 }, { \"ratio\": 0.9, \"rpm\": 8000 }]", "[]", "/machines/0/baselines/1/shiftCurve", "[]", TooFewPoints, "1 to 200"),
        ["an engagement out of range"] = Machine("\"engagementRpm\": 1970", "\"engagementRpm\": 19", "/machines/0/baselines/0/engagementRpm", "19", OutOfRange, "100 to 30000"),
        ["an altitude without its unit"] = Machine("\"1000 ft\"", "1000", "/machines/0/baselines/1/altitude", "1000", WrongShape, "its unit"),
        ["an altitude out of range"] = Machine("\"1000 ft\"", "\"100000 m\"", "/machines/0/baselines/1/altitude", "100000 m", OutOfRange, "-500 m to 6000 m"),
        ["an altitude beyond the troposphere"] = Machine("\"1000 ft\"", "\"40 km\"", "/machines/0/baselines/1/altitude", "40 km", BadQuantity, "length"),
        ["a temperature below absolute zero"] = Machine("\"68 °F\"", "\"-300 °C\"", "/machines/0/baselines/1/temperature", "-300 °C", OutOfRange, "-60 °C to 60 °C"),
        ["more vapour than air can hold"] = Machine("\"55 %\"", "\"150 %\"", "/machines/0/baselines/1/relativeHumidity", "150 %", OutOfRange, "0 % to 100 %"),
        ["a humidity below nothing"] = Machine("\"55 %\"", "\"-1 %\"", "/machines/0/baselines/1/relativeHumidity", "-1 %", OutOfRange, "0 % to 100 %"),
        ["a humidity without its unit"] = Machine("\"55 %\"", "0.6", "/machines/0/baselines/1/relativeHumidity", "0.6", WrongShape, "its unit"),
        ["a temperature out of range"] = Machine("\"68 °F\"", "\"68 °C\"", "/machines/0/baselines/1/temperature", "68 °C", OutOfRange, "-60 °C to 60 °C"),
        ["a run without parts on a machine without a fitted set"] = new(
            c => c.Set(File, Regex.Replace(c.Text(File), "\"fitted\": \\{[^{}]*\\{[^{}]*\\}[^{}]*\\},", "")),
            File, null, "/machines/0/baselines/0/parts", null, MissingValue, "say what was fitted here"),
        ["more runs than are taken"] = new(
            c => c.Replace(File, FlatRun, string.Join(", ", Enumerable.Repeat(FlatRun, 50))),
            File, null, "/machines/0/baselines", null, TooManyPoints, "at most 50"),
    };

    private static string Peaks(double torqueRpm, double torque, double powerRpm, double kilowatts) =>
        $"\"peakTorqueRpm\": {torqueRpm}, \"peakTorque\": \"{torque} N·m\", "
        + $"\"peakPowerRpm\": {powerRpm}, \"peakPower\": \"{kilowatts} kW\", ";
}
