using static PartPicker.Catalog.FindingCodes;
using static PartPicker.Parts.CatalogSnapshot;
using static PartPicker.Tests.Catalog.BadRow;
using static PartPicker.Tests.Catalog.TestCatalog;

namespace PartPicker.Tests.Catalog;

/// <summary>What can be wrong in CSV files: row, column and value as a person sees them, and a piece of the remedy.</summary>
internal static class BadCsvRows
{
    private const string HelixHeader = "id,name,helixDeg,finishDeg,finishTravel,anglePoints,camRadius [mm]";
    private const string Geometry =
        "ds-geometry,\"Known by geometry, in inches\",0.192 in,2.2 in,5,7,closedGround,music-wire-a228,3.4 in,1.35 in,,,,,,";

    private const string Ramp = "1 = 0 mm: 40 mm; 28 mm: 64 mm | 2 = 0 mm: 40.2 mm; 28 mm: 65 mm";

    public static readonly Dictionary<string, BadRow> Cases = new()
    {
        // Radius curves.
        ["a radius that falls"] = Edit(Flyweights, "0 mm: 40 mm; 28 mm: 66 mm", "0 mm: 40 mm; 10 mm: 50 mm; 20 mm: 45 mm; 28 mm: 66 mm", 2, "radiusCurve", null, WrongTrend, "does not grow with travel at 10.0 mm (0.3937 in)"),
        ["a radius that starts level"] = Edit(Flyweights, "0 mm: 40 mm; 28 mm: 66 mm", "0 mm: 40 mm; 10 mm: 41 mm; 20 mm: 55 mm; 28 mm: 66 mm", 2, "radiusCurve", null, WrongTrend, "at 0.0 mm"),
        ["a step of a ramp that stands still"] = Edit(Flyweights, "28 mm: 65 mm", "28 mm: 40.2 mm", 6, "adjusterCurves", null, WrongTrend, "does not push"),

        // The columns.
        ["a column that no kind has"] = Edit(Helices, "camRadius [mm]", "camColour", 1, "camColour", null, UnknownColumn, "camRadius"),
        ["a column in other capitals"] = Edit(Helices, "helixDeg", "HelixDeg", 1, "HelixDeg", null, UnknownColumn, "helixDeg"),
        ["a column without a name"] = Edit(Helices, "name,", ",", 1, "", null, UnknownColumn, "Known: id"),
        ["a column that stands twice"] = Edit(Helices, ",name,", ",helixDeg,", 1, "helixDeg", null, DuplicateColumn, "Leave one out"),
        ["a column that stands twice with another unit"] = Edit(Helices, "finishTravel", "camRadius [in]", 1, "camRadius [mm]", null, DuplicateColumn, "Leave one out"),
        ["a needed column that is missing"] = new(c => c.Set(Belts, "id,pitchLength,massPerLength,friction\nbe-2,1 m,0.4 kg/m,0.3\n"), Belts, 1, "efficiency", null, MissingColumn, "Share of the power"),
        ["a header unit of another dimension"] = Edit(Helices, "camRadius [mm]", "camRadius [N]", 1, "camRadius [N]", null, BadQuantity, "a length was expected"),
        ["a header unit on a bare number"] = Edit(Helices, "helixDeg,", "helixDeg [deg],", 1, "helixDeg [deg]", null, UnitInHeader, "none"),
        ["a header unit on a curve"] = Edit(Helices, "anglePoints", "anglePoints [mm]", 1, "anglePoints [mm]", null, UnitInHeader, "in the points"),

        // The lines.
        ["columns parted by semicolons"] = Edit(Helices, HelixHeader, HelixHeader.Replace(',', ';'), 1, null, HelixHeader.Replace(',', ';'), WrongDelimiter, "by commas"),
        ["columns parted by tabs"] = Edit(Helices, HelixHeader, HelixHeader.Replace(',', '\t'), 1, null, HelixHeader.Replace(',', '\t'), WrongDelimiter, "by commas"),
        ["a file of semicolons and decimal commas"] = new(c => c.Set(Helices, "id;helixDeg\nhx-two;40,5\n"), Helices, 1, null, "id;helixDeg", WrongDelimiter, "a point before decimals"),
        ["a file without a line"] = new(c => c.Set(Helices, " \n\n"), Helices, null, null, null, MissingHeader, "name the columns"),
        ["a row with a cell too few"] = Helix("hx-9,,40,,,", null, "hx-9,,40,,,", RaggedRow, "6 cells, the header 7"),
        ["a row with a decimal comma that makes a cell"] = Helix("hx-9,,40,5,,,,", null, "hx-9,,40,5,,,,", RaggedRow, "decimals take a point"),
        ["an inch mark in a bare cell"] = Helix("hx-9,,40,,0.9\",,", null, "hx-9,,40,,0.9\",,", StrayQuote, "Write inches as in"),
        ["a quoted cell that goes on"] = Helix("hx-9,\"so\" named,40,,,,", null, "hx-9,\"so\" named,40,,,,", StrayQuote, "Double a quote"),
        ["a quoted cell that never ends"] = Helix("hx-9,\"so named,40,,,,", null, "hx-9,\"so named,40,,,,", UnclosedQuote, "Close the quote"),
        ["a quoted cell that ends on the next line"] = Helix("hx-9,\"so,40,,,,\n", null, "hx-9,\"so,40,,,,", UnclosedQuote, "line break"),

        // Ids.
        ["an id with a space"] = Helix("hx 9,,40,,,,", "id", "hx 9", BadId, "letters a to z"),
        ["an id of 65 characters"] = Helix($"{new string('h', 65)},,40,,,,", "id", new string('h', 65), BadId, "1 to 64"),
        ["an id of letters from elsewhere"] = Helix("hx-ü,,40,,,,", "id", "hx-ü", BadId, "letters a to z"),
        ["a row without an id"] = Helix(",Nameless,40,,,,", "id", null, MissingValue, "Unique in the catalog"),
        ["an id that stands twice in a file"] = Helix("hx-two,,40,,,,", "id", "hx-two", DuplicateId, "helices.csv, line 3"),
        ["an id that an item of another kind has"] = Helix("fw-two,,40,,,,", "id", "fw-two", DuplicateId, "flyweights.csv, line 3"),

        // One value.
        ["a needed cell that is empty"] = Edit(Belts, "1010 mm", "", 2, "pitchLength", null, MissingValue, "Length along the pitch line"),
        ["a quantity without its unit"] = Edit(DriveSprings, "0.192 in", "0.192", 2, "wireDiameter", "0.192", BadQuantity, "0.192 mm"),
        ["a quantity in a unit of another dimension"] = Edit(DriveSprings, "17.5 N/mm", "17.5 N", 3, "rate", "17.5 N", BadQuantity, "N/mm"),
        ["a quantity in no known unit"] = Edit(DriveSprings, "0.192 in", "0.192 furlong", 2, "wireDiameter", "0.192 furlong", BadQuantity, "no known unit"),
        ["a quantity that is a word"] = Edit(DriveSprings, "90 mm", "ninety", 3, "freeLength", "ninety", BadQuantity, "does not start with a number"),
        ["a quantity that is not a number"] = Edit(DriveSprings, "90 mm", "NaN mm", 3, "freeLength", "NaN mm", BadQuantity, "does not start with a number"),
        ["a quantity with a decimal comma"] = Edit(DriveSprings, "17.5 N/mm", "\"17,5 N/mm\"", 3, "rate", "17,5 N/mm", DecimalComma, "point"),
        ["a unit under a header that states it"] = Edit(Flyweights, "Plain arm,55,", "Plain arm,55 g,", 2, "bodyMass", "55 g", BadNumber, "The header states the unit, g"),
        ["a decimal comma under a header with a unit"] = Edit(Flyweights, "Plain arm,55,", "Plain arm,\"55,5\",", 2, "bodyMass", "55,5", DecimalComma, "point"),
        ["a wire too thick"] = Edit(DriveSprings, "0.192 in", "0.9 in", 2, "wireDiameter", "0.9 in", OutOfRange, "0.5 mm to 20 mm"),
        ["a wire too thin"] = Edit(DriveSprings, "0.192 in", "0.192 mm", 2, "wireDiameter", "0.192 mm", OutOfRange, "0.5 mm to 20 mm"),
        ["a rate in the wrong unit"] = Edit(DriveSprings, "17.5 N/mm", "17.5 N/m", 3, "rate", "17.5 N/m", OutOfRange, "0.1 N/mm to 1000 N/mm"),
        ["a mass below zero"] = Edit(Flyweights, "Plain arm,55,", "Plain arm,-55,", 2, "bodyMass", "-55", OutOfRange, "1 g to 500 g"),
        ["an angle out of range"] = Helix("hx-9,,90,,,,", "helixDeg", "90", OutOfRange, "10 to 80"),
        ["a bare number with a unit"] = Helix("hx-9,,40 deg,,,,", "helixDeg", "40 deg", BadNumber, "without a unit"),
        ["a bare number with a decimal comma"] = Helix("hx-9,,\"40,5\",,,,", "helixDeg", "40,5", DecimalComma, "point"),
        ["a bare number that is infinite"] = Helix("hx-9,,1e999,,,,", "helixDeg", "1e999", BadNumber, "such as 12.5"),
        ["a bare number in hexadecimal"] = Helix("hx-9,,0x28,,,,", "helixDeg", "0x28", BadNumber, "such as 12.5"),
        ["a name of 121 characters"] = Helix($"hx-9,{new string('n', 121)},40,,,,", "name", new string('n', 120) + "…", BadText, "1 to 120"),
        ["a name with a tab in it"] = Helix("hx-9,so\tnamed,40,,,,", "name", "so\tnamed", BadText, "control character"),
        ["a word that is no choice"] = Edit(DriveSprings, "closedGround", "closed-ground", 2, "ends", "closed-ground", BadChoice, "open, openGround, closed, closedGround"),
        ["a choice in other capitals"] = Edit(DriveSprings, "closedGround", "ClosedGround", 2, "ends", "ClosedGround", BadChoice, "closedGround"),
        ["a choice by number"] = Edit(DriveSprings, "closedGround", "3", 2, "ends", "3", BadChoice, "closedGround"),
        ["a wire that the table lacks"] = Edit(DriveSprings, "music-wire-a228", "piano", 2, "material", "piano", UnknownMaterial, "music-wire-a228"),

        // Curves and lists.
        ["a curve of one point"] = Edit(DriveSprings, "40 mm: 900 N; 60 mm: 500 N; 80 mm: 100 N", "40 mm: 900 N", 5, "loadTable", "40 mm: 900 N", TooFewPoints, "2 to 200"),
        ["a curve that steps back"] = Edit(DriveSprings, "60 mm: 500 N", "30 mm: 500 N", 5, "loadTable", "30 mm: 500 N", NotRising, "above that of the point before"),
        ["a curve that stands still"] = Edit(DriveSprings, "60 mm: 500 N", "4 cm: 500 N", 5, "loadTable", "4 cm: 500 N", NotRising, "above that of the point before"),
        ["a point without a colon"] = Edit(DriveSprings, "60 mm: 500 N", "60 mm 500 N", 5, "loadTable", "60 mm 500 N", BadPoint, "x: y"),
        ["a point of three numbers"] = Edit(DriveSprings, "60 mm: 500 N", "60 mm: 500 N: 3", 5, "loadTable", "60 mm: 500 N: 3", BadPoint, "x: y"),
        ["a semicolon after the last point"] = Edit(DriveSprings, "80 mm: 100 N", "80 mm: 100 N;", 5, "loadTable", "", BadPoint, "x: y"),
        ["a point with its numbers exchanged"] = Edit(DriveSprings, "60 mm: 500 N", "500 N: 60 mm", 5, "loadTable", "500 N: 60 mm", BadQuantity, "In x"),
        ["a point whose second number has no unit"] = Edit(DriveSprings, "60 mm: 500 N", "60 mm: 500", 5, "loadTable", "60 mm: 500", BadQuantity, "In y"),
        ["a point out of range"] = Edit(DriveSprings, "60 mm: 500 N", "60 mm: 500 kN", 5, "loadTable", "60 mm: 500 kN", OutOfRange, "0 N to 20000 N"),
        ["a bare axis with a unit"] = Edit(DrivenSprings, "90: 14 N·m", "90 deg: 14 N·m", 5, "torqueTable", "90 deg: 14 N·m", BadNumber, "In x"),
        ["an angle in a curve out of range"] = Edit(Helices, "8 mm: 40", "8 mm: 85", 4, "anglePoints", "8 mm: 85", OutOfRange, "10 to 80"),
        ["a curve of 201 points"] = new(
            c => c.Replace(Flyweights, "0 mm: 40 mm; 28 mm: 66 mm", Points(200)).Replace(Flyweights, "0 mm: 40.5 mm; 3 mm: 44.5 mm; 28 mm: 66.9 mm", Points(201)),
            Flyweights, 3, "radiusCurve", Points(201)[..120] + "…", TooManyPoints, "2 to 200"),
        ["a mass that stands twice in its list"] = Edit(Flyweights, "0 g; 4 g", "0 g; 4 g; 0.004 kg", 3, "heelMasses", "0.004 kg", DuplicateValue, "Leave one out"),
        ["a mass in a list out of range"] = Edit(Flyweights, "0 g; 4 g", "0 g; 4 kg", 3, "heelMasses", "4 kg", OutOfRange, "0 g to 100 g"),
        ["an empty entry in a list"] = Edit(Flyweights, "0 g; 4 g", "0 g;; 4 g", 3, "heelMasses", "", BadQuantity, "Nothing is written"),

        // Values together.
        ["a spring that is known in no way"] = Edit(DriveSprings, "90 mm,,17.5 N/mm", ",,17.5 N/mm", 3, null, null, NotKnown, "rate and freeLength"),
        ["a load without its length"] = Edit(DriveSprings, "2.5 in,60 lbf", ",60 lbf", 4, "firstLength", null, HalfGiven, "firstLength is left out"),
        ["one load of two"] = Edit(DriveSprings, "2.5 in,60 lbf,1.5 in,120 lbf", "2.5 in,60 lbf,,", 4, "secondLength", null, HalfGiven, "secondLength, secondLoad are left out"),
        ["two loads at one length"] = Edit(DriveSprings, "1.5 in,120 lbf", "63.5 mm,120 lbf", 4, "secondLoad", "120 lbf", WrongTrend, "two different lengths"),
        ["a shorter spring that carries less"] = Edit(DriveSprings, "1.5 in,120 lbf", "1.5 in,40 lbf", 4, "secondLoad", "40 lbf", WrongTrend, "must carry more"),
        ["a load table that rises with length"] = Edit(DriveSprings, "60 mm: 500 N", "60 mm: 950 N", 5, "loadTable", "40 mm: 900 N; 60 mm: 950 N; 80 mm: 100 N", WrongTrend, "rising length"),
        ["a wire as thick as its coil allows no bore"] = Edit(DriveSprings, Geometry, Geometry.Replace("0.192 in,2.2 in", "10 mm,20 mm"), 2, "wireDiameter", "10 mm", NotBelow, "2 times wireDiameter"),
        ["a spring solid above its free length"] = Edit(DriveSprings, "1.35 in", "86.36 mm", 2, "solidLength", "86.36 mm", NotBelow, "freeLength, which is 3.4 in"),
        ["a load above the free length"] = Edit(DriveSprings, "2.5 in,60 lbf", "3.6 in,60 lbf", 4, "firstLength", "3.6 in", NotBelow, "freeLength"),
        ["more active coils than coils"] = Edit(DriveSprings, "5,7,", "8,7,", 2, "activeCoils", "8", NotBelow, "totalCoils"),
        ["a driven spring without its compression"] = Edit(DrivenSprings, "100 mm,9 N/mm", "100 mm,", 2, null, null, NotKnown, "axial force"),
        ["a driven load without its length"] = Edit(DrivenSprings, "2.4 in,80 lbf", ",80 lbf", 4, "loadLength", null, HalfGiven, "loadLength, load"),
        ["one torque of two"] = Edit(DrivenSprings, "120,178 lbf·in", "120,", 4, "secondTorque", null, HalfGiven, "secondTorque is left out"),
        ["torque that falls with twist"] = Edit(DrivenSprings, "120,178 lbf·in", "50,178 lbf·in", 4, "secondTorque", "178 lbf·in", WrongTrend, "greater twist"),
        ["a torque table that falls"] = Edit(DrivenSprings, "0: 0 N·m; 90: 14 N·m", "0: 14 N·m; 90: 0 N·m", 5, "torqueTable", "0: 14 N·m; 90: 0 N·m", WrongTrend, "rising twist"),
        ["a driven load table that rises"] = Edit(DrivenSprings, "60 mm: 360 N", "60 mm: 560 N", 5, "loadTable", "40 mm: 540 N; 60 mm: 560 N", WrongTrend, "rising length"),
        ["an inside as wide as the outside"] = Edit(DrivenSprings, "49 mm,5.1", "60.3 mm,5.1", 3, "insideDiameter", "60.3 mm", NotBelow, "outsideDiameter"),
        ["a driven load at free length"] = Edit(DrivenSprings, "2.4 in,80 lbf", "4 in,80 lbf", 4, "loadLength", "4 in", NotBelow, "freeLength"),
        ["a driven wire that the table lacks"] = Edit(DrivenSprings, "chrome-silicon-a401", "chrome", 3, "material", "chrome", UnknownMaterial, "chrome-silicon-a401"),
        ["a helix without an angle"] = Helix("hx-9,,,,,,42", null, null, NotKnown, "helixDeg"),
        ["a helix with its angle given twice"] = Helix("hx-9,,40,,,0 mm: 40; 9 mm: 38,", "anglePoints", "0 mm: 40; 9 mm: 38", EitherOr, "not both"),
        ["a finish angle beside points"] = Helix("hx-9,,,38,9 mm,0 mm: 40; 9 mm: 38,", "finishDeg", "38", EitherOr, "goes with helixDeg"),
        ["a finish angle without its travel"] = Helix("hx-9,,40,38,,,", "finishTravel", null, HalfGiven, "finishDeg, finishTravel"),
        ["a finish travel without its angle"] = Helix("hx-9,,40,,9 mm,,", "finishDeg", null, HalfGiven, "finishDeg, finishTravel"),
        ["a station without its masses"] = Edit(Flyweights, "0 g; 4 g", "", 3, "heelMasses", null, HalfGiven, "heelCurve tells nothing without heelMasses"),
        ["masses without their station"] = Edit(Flyweights, "0 mm: 44 mm; 28 mm: 86 mm", "", 3, "tipCurve", null, HalfGiven, "tipMasses tells nothing without tipCurve or armProfile"),

        ["a driven spring solid at its free length"] = new(
            c => c.Set(DrivenSprings, "id,freeLength,rate,twistRate,solidLength\ndv-rate,100 mm,9 N/mm,9 N·m/rad,100 mm\ndv-pressed,98 mm,8 N/mm,,\n"),
            DrivenSprings, 2, "solidLength", "100 mm", NotBelow, "freeLength"),
        ["a belt worn out when new"] = Edit(Belts, "33.5 mm", "36 mm", 2, "wearLimit", "36 mm", NotBelow, "topWidth, which is 36 mm"),
        ["a shim all hole"] = Edit(Shims, "40 mm", "56 mm", 2, "insideDiameter", "56 mm", NotBelow, "outsideDiameter"),

        // Ways to know a flyweight.
        ["a path without a mass"] = Edit(Flyweights, "Plain arm,55,", "Plain arm,,", 2, null, null, NotKnown, "bodyMass with radiusCurve"),
        ["a mass without a path"] = Edit(Flyweights, "0 mm: 40 mm; 28 mm: 66 mm", "", 2, null, null, NotKnown, "referenceArm with massOverReference"),
        ["a ramp with a path of its own"] = Edit(Flyweights, "Ramp of two steps,40,,,", "Ramp of two steps,40,,0 mm: 40 mm; 28 mm: 66 mm,", 6, "adjusterCurves", Ramp, EitherOr, "for a ramp"),
        ["a ramp with an arm profile"] = Edit(Flyweights, "Ramp of two steps,40,,,,,,,,,,", "Ramp of two steps,40,,,,,,,ap-1,,,", 6, "adjusterCurves", Ramp, EitherOr, "for a ramp"),
        ["pin masses without a ramp"] = Edit(Flyweights, "28 mm: 66 mm,,,,,,,,,,,", "28 mm: 66 mm,,,,,,,,,10 g,,", 2, "adjusterCurves", null, HalfGiven, "pinMasses tells nothing without adjusterCurves"),
        ["a mass over no arm"] = Edit(Flyweights, "fw-two,-3 g", ",-3 g", 5, "referenceArm", null, HalfGiven, "referenceArm is left out"),
        ["an arm without its mass over another"] = Edit(Flyweights, "fw-two,-3 g", "fw-two,", 5, "massOverReference", null, HalfGiven, "massOverReference is left out"),
        ["a mass over an arm out of range"] = Edit(Flyweights, "-3 g", "-300 g", 5, "massOverReference", "-300 g", OutOfRange, "-200 g to 200 g"),
        ["an arm weighed against a spring"] = Edit(Flyweights, "fw-two,-3 g", "ds-rate,-3 g", 5, "referenceArm", "ds-rate", WrongKind, "a flyweight belongs here"),
        ["an arm weighed against itself"] = Edit(Flyweights, "fw-two,-3 g", "fw-weighed,-3 g", 5, "referenceArm", "fw-weighed", ReferenceLoop, "leads back here: fw-weighed"),
        ["an arm profile that is nowhere"] = Edit(Flyweights, "ap-1", "ap-9", 4, "armProfile", "ap-9", UnknownReference, "the id ap-9"),
        ["an arm profile that is an arm"] = Edit(Flyweights, "ap-1", "fw-two", 4, "armProfile", "fw-two", WrongKind, "armProfile belongs here"),
        ["masses whose curve neither body nor profile has"] = Edit(Flyweights, "44,,,,,,0; 5", "44,,,,3 g,,0; 5", 4, "heelCurve", null, HalfGiven, "the arm profile ap-1 has none"),
        ["a holding of no masses"] = Edit(Flyweights, "28 mm: 66 mm,,,,,,,,,,,", "28 mm: 66 mm,,,,,,,,,,screw,", 2, "tipMasses", null, HalfGiven, "tipHolding tells nothing without tipMasses"),
        ["masses all above their limit"] = Edit(Flyweights, "0; 5,ap-1", "9; 12,ap-1", 4, "tipMasses", "9; 12", NotBelow, "tipMassLimit, which is 8 g"),
        ["a step without a name"] = Edit(Flyweights, "1 = 0 mm", "0 mm", 6, "adjusterCurves", "0 mm: 40 mm; 28 mm: 64 mm", BadEntry, "name = x: y; x: y"),
        ["a step with an empty name"] = Edit(Flyweights, "1 = 0 mm", "= 0 mm", 6, "adjusterCurves", ": 0 mm: 40 mm; 28 mm: 64 mm", BadText, "1 to 40"),
        ["a step that stands twice"] = Edit(Flyweights, "| 2 =", "| 1 =", 6, "adjusterCurves", "1: 0 mm: 40.2 mm; 28 mm: 65 mm", DuplicateValue, "as it is stamped"),
        ["a step without points"] = Edit(Flyweights, "2 = 0 mm: 40.2 mm; 28 mm: 65 mm", "2 =", 6, "adjusterCurves", "2: ", TooFewPoints, "2 to 200"),
        ["a stroke after the last step"] = Edit(Flyweights, "28 mm: 65 mm", "28 mm: 65 mm |", 6, "adjusterCurves", "", BadEntry, "parted by |"),
        ["a step whose points step back"] = Edit(Flyweights, "28 mm: 65 mm", "0 mm: 65 mm", 6, "adjusterCurves", "0 mm: 65 mm", NotRising, "above that of the point before"),
        ["a header unit on a list of curves"] = Edit(Flyweights, "adjusterCurves", "adjusterCurves [mm]", 1, "adjusterCurves [mm]", null, UnitInHeader, "in the points"),

        // Facts of the trade.
        ["a way of selling that is none"] = Edit(DriveSprings, "pair,2", "dozen,2", 6, "soldAs", "dozen", BadChoice, "each, pair, set"),
        ["a pack of nothing"] = Edit(DriveSprings, "pair,2", "pair,0", 6, "packQuantity", "0", OutOfRange, "1 to 1000"),
        ["a replacement that is nowhere"] = Edit(DriveSprings, "2,ds-rate", "2,ds-new", 6, "supersededBy", "ds-new", UnknownReference, "Check the spelling"),
        ["a replacement of another kind"] = Edit(DriveSprings, "2,ds-rate", "2,fw-two", 6, "supersededBy", "fw-two", WrongKind, "a driveSpring belongs here"),
        ["a replacement that is no part"] = Edit(DriveSprings, "2,ds-rate", "2,ge-1", 6, "supersededBy", "ge-1", WrongKind, "a part belongs here"),
        ["a part that replaces itself"] = Edit(DriveSprings, "2,ds-rate", "2,ds-old", 6, "supersededBy", "ds-old", ReferenceLoop, "leads back here: ds-old"),
        ["parts that replace each other"] = new(
            c => c.Replace(DriveSprings, "2,ds-rate", "2,ds-older").Append(DriveSprings, "ds-older,,,,,,,,90 mm,,17 N/mm,,,,,,,,ds-old,\n"),
            DriveSprings, 6, "supersededBy", "ds-older", ReferenceLoop, "ds-older, ds-old"),
        ["a part that leads into a loop"] = new(
            c => c.Replace(DriveSprings, "2,ds-rate", "2,ds-old").Append(DriveSprings, "ds-older,,,,,,,,90 mm,,17 N/mm,,,,,,,,ds-old,\n"),
            DriveSprings, 6, "supersededBy", "ds-old", ReferenceLoop, "leads back here"),
        ["a part replaced once more often than is followed"] = new(
            c => c.Append(DriveSprings, GoodRowTests.Replaced(MaxSupersessions + 1)),
            DriveSprings, 7, "supersededBy", "ds-2", ChainTooLong, "more than 20 steps"),
        ["a clutch with one year"] = Edit(DriveSprings, "dr-1 2018-2023", "dr-1 2018", 6, "fitsClutches", "dr-1 2018", BadEntry, "clutch-id 2018-2023"),
        ["a clutch with a year of five digits"] = Edit(DriveSprings, "2018-2023", "2018-20230", 6, "fitsClutches", "dr-1 2018-20230", OutOfRange, "In toYear"),
        ["a clutch with its years exchanged"] = Edit(DriveSprings, "2018-2023", "2023-2018", 6, "fitsClutches", "dr-1 2023-2018", NotBelow, "Exchange them"),
        ["a clutch that stands twice"] = Edit(DriveSprings, "dr-elsewhere", "dr-1 2018-2023", 6, "fitsClutches", "dr-1 2018-2023", DuplicateValue, "Join the two"),
        ["a clutch of an id that can be none"] = Edit(DriveSprings, "dr-elsewhere", "dr/2", 6, "fitsClutches", "dr/2", BadId, "letters a to z"),
        ["a clutch that is a gearing"] = Edit(DriveSprings, "dr-elsewhere", "ge-1", 6, "fitsClutches", "dr-1 2018-2023; ge-1; dn-1 2020-; dr-2 -2016", WrongKind, "ge-1 is no clutch"),
        ["a semicolon after the last clutch"] = Edit(DriveSprings, "dr-2 -2016", "dr-2 -2016;", 6, "fitsClutches", "", BadEntry, "parted by semicolons"),

        // Kits.
        ["a kit of nothing"] = Edit(Kits, "ds-rate; fw-two; sh-1 x2", "", 2, "contents", null, MissingValue, "The parts in it"),
        ["packs without their cross"] = Edit(Kits, "sh-1 x2", "sh-1 2", 2, "contents", "sh-1 2", BadEntry, "part-id x2"),
        ["no packs of a part"] = Edit(Kits, "sh-1 x2", "sh-1 x0", 2, "contents", "sh-1 x0", OutOfRange, "In packs"),
        ["packs beyond all numbers"] = Edit(Kits, "sh-1 x2", "sh-1 x99999999999999999999", 2, "contents", "sh-1 x99999999999999999999", BadNumber, "whole number"),
        ["a part that stands twice in a kit"] = Edit(Kits, "ds-rate; fw-two", "ds-rate; ds-rate x2", 2, "contents", "ds-rate x2", DuplicateValue, "Join the two"),
        ["a part of a kit that is nowhere"] = Edit(Kits, "fw-two", "fw-lost", 2, "contents", "ds-rate; fw-lost; sh-1 x2", UnknownReference, "the id fw-lost"),
        ["a machine in a kit"] = Edit(Kits, "fw-two", "hill-cart", 2, "contents", null, WrongKind, "hill-cart is the id of a machine; a part belongs here"),
        ["a kit in a kit"] = Edit(Kits, "fw-two", "kt-2", 2, "contents", null, WrongKind, "kt-2 is a kit itself"),
        ["a kit in itself"] = Edit(Kits, "fw-two", "kt-1", 2, "contents", null, WrongKind, "kt-1 is a kit itself"),

        // Labour.
        ["labour of an outlet that is nowhere"] = Edit(Labour, "north,hole", "south,hole", 3, "outlet", "south", UnknownReference, "outlets/"),
        ["labour of an outlet whose id can be none"] = Edit(Labour, "north,hole", "the north,hole", 3, "outlet", "the north", BadId, "letters a to z"),
        ["labour of a slot that is none"] = Edit(Labour, "north,hole", "north,belt", 3, "slot", "belt", BadChoice, "driveSpring, flyweight, drivenSpring, hole, helix"),
        ["labour of a slot that stands twice"] = Edit(Labour, "north,hole", "north,driveSpring", 3, "slot", "driveSpring", DuplicateValue, "Leave one out"),
        ["labour of more minutes than a day has work"] = Edit(Labour, ",35", ",1001", 2, "minutes", "1001", OutOfRange, "0 to 1000"),
        ["labour in minutes with their unit"] = Edit(Labour, ",35", ",35 min", 2, "minutes", "35 min", BadNumber, "whole number"),
        ["labour without its minutes"] = Edit(Labour, ",35", ",", 2, "minutes", null, BadNumber, "whole number"),
        ["labour without the column of minutes"] = new(c => c.Set(Labour, "outlet,slot\nnorth,hole\n"), Labour, 1, "minutes", null, MissingColumn, "minutes is needed"),

        // Outlets.
        ["an offer of an unknown part"] = Edit(Outlet, "ds-rate", "ds-lost", 2, "partId", "ds-lost", UnknownReference, "Check the spelling"),
        ["an offer of a machine"] = Edit(Outlet, "ds-rate", "hill-cart", 2, "partId", "hill-cart", WrongKind, "a part belongs here"),
        ["an offer without a part"] = Edit(Outlet, "ds-rate", "", 2, "partId", null, BadId, "1 to 64"),
        ["a part with two offers"] = Edit(Outlet, "hx-two", "ds-rate", 4, "partId", "ds-rate", DuplicateId, "Join the two"),
        ["a currency in small letters"] = Edit(Outlet, "ds-rate,CAD", "ds-rate,cad", 2, "currency", "cad", BadCurrency, "ISO 4217"),
        ["a second currency"] = Edit(Outlet, "hx-two,CAD", "hx-two,USD", 4, "currency", "USD", MixedCurrency, "CAD"),
        ["a row without a currency"] = Edit(Outlet, "hx-two,CAD", "hx-two,", 4, "currency", null, BadCurrency, "ISO 4217"),
        ["a price with decimals"] = Edit(Outlet, "2450", "24.50", 2, "priceMinor", "24.50", BadNumber, "whole number"),
        ["a price below zero"] = Edit(Outlet, "2450", "-1", 2, "priceMinor", "-1", OutOfRange, "0 to"),
        ["a stock beyond reason"] = Edit(Outlet, ",0\n", ",1000001\n", 3, "stock", "1000001", OutOfRange, "0 to 1000000"),
        ["an outlet without the stock column"] = new(c => c.Set(Outlet, "partId,currency,priceMinor\nds-rate,CAD,5\n"), Outlet, 1, "stock", null, MissingColumn, "stock is needed"),
        ["an outlet column of an unknown name"] = new(c => c.Set(Outlet, "partId,currency,priceMinor,stock,shelf\nds-rate,CAD,5,6,7\n"), Outlet, 1, "shelf", null, UnknownColumn, "priceMinor, stock"),
        ["an outlet column that stands twice"] = new(c => c.Set(Outlet, "partId,currency,priceMinor,stock,stock\nds-rate,CAD,5,6,7\n"), Outlet, 1, "stock", null, DuplicateColumn, "Leave one out"),
        ["an outlet with no row"] = new(c => c.Set(Outlet, "partId,currency,priceMinor,stock\n"), Outlet, null, null, null, MissingValue, "currency is not known"),
        ["an outlet whose file name is no id"] = new(
            c => c.Set("outlets/north shop.csv", "partId,currency,priceMinor,stock\nds-rate,EUR,,\n"),
            "outlets/north shop.csv", null, null, "north shop", BadId, "Rename the file"),
    };

    private static string Points(int count) =>
        string.Join("; ", Enumerable.Range(0, count).Select(i => $"{i / 10.0} mm: {40 + i / 10.0} mm"));
}
