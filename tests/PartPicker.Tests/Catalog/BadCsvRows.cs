using static PartPicker.Catalog.FindingCodes;
using static PartPicker.Tests.Catalog.BadRow;
using static PartPicker.Tests.Catalog.TestCatalog;

namespace PartPicker.Tests.Catalog;

/// <summary>What can be wrong in CSV files: row, column and value as a person sees them, and a piece of the remedy.</summary>
internal static class BadCsvRows
{
    private const string HelixHeader = "id,name,helixDeg,finishDeg,finishTravel,anglePoints,camRadius [mm]";
    private const string Geometry =
        "ds-geometry,\"Known by geometry, in inches\",0.192 in,2.2 in,5,7,closedGround,music-wire-a228,3.4 in,1.35 in,,,,,,";

    public static readonly Dictionary<string, BadRow> Cases = new()
    {
        // The columns.
        ["a column that no kind has"] = Edit(Helices, "camRadius [mm]", "camColour", 1, "camColour", null, UnknownColumn, "camRadius"),
        ["a column in other capitals"] = Edit(Helices, "helixDeg", "HelixDeg", 1, "HelixDeg", null, UnknownColumn, "helixDeg"),
        ["a column without a name"] = Edit(Helices, "name,", ",", 1, "", null, UnknownColumn, "Known: id"),
        ["a column that stands twice"] = Edit(Helices, ",name,", ",helixDeg,", 1, "helixDeg", null, DuplicateColumn, "Leave one out"),
        ["a column that stands twice with another unit"] = Edit(Helices, "finishTravel", "camRadius [in]", 1, "camRadius [mm]", null, DuplicateColumn, "Leave one out"),
        ["a needed column that is missing"] = new(c => c.Set(Flyweights, "id,bodyMass\nfw-plain,5 g\nfw-two,5 g\n"), Flyweights, 1, "radiusCurve", null, MissingColumn, "Radius of gyration"),
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
        ["a needed cell that is empty"] = Edit(Flyweights, "fw-plain,Plain arm,55,", "fw-plain,Plain arm,,", 2, "bodyMass", null, MissingValue, "Mass of one arm"),
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
            c => c.Set(Flyweights, $"id,bodyMass,radiusCurve\nfw-two,40 g,{Points(201)}\nfw-plain,40 g,{Points(200)}\n"),
            Flyweights, 2, "radiusCurve", Points(201)[..120] + "…", TooManyPoints, "2 to 200"),
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
        ["a driven spring without its twist"] = Edit(DrivenSprings, "9 N·m/rad", "", 2, null, null, NotKnown, "torque of twist"),
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
        ["a station without its masses"] = Edit(Flyweights, "0 g; 4 g", "", 3, "heelMasses", null, HalfGiven, "heelCurve, heelMasses"),
        ["masses without their station"] = Edit(Flyweights, "0 mm: 44 mm; 28 mm: 86 mm", "", 3, "tipCurve", null, HalfGiven, "tipCurve, tipMasses"),

        // Outlets.
        ["an offer of an unknown part"] = Edit(Outlet, "ds-rate", "ds-lost", 2, "partId", "ds-lost", UnknownReference, "Check the spelling"),
        ["an offer of a machine"] = Edit(Outlet, "ds-rate", "hill-cart", 2, "partId", "hill-cart", WrongKind, "Outlets sell parts"),
        ["an offer without a part"] = Edit(Outlet, "ds-rate", "", 2, "partId", null, BadId, "1 to 64"),
        ["a part with two offers"] = Edit(Outlet, "hx-two", "ds-rate", 4, "partId", "ds-rate", DuplicateId, "Join the two"),
        ["a currency in small letters"] = Edit(Outlet, "ds-rate,CAD", "ds-rate,cad", 2, "currency", "cad", BadCurrency, "ISO 4217"),
        ["a second currency"] = Edit(Outlet, "hx-two,CAD", "hx-two,USD", 4, "currency", "USD", MixedCurrency, "CAD"),
        ["a row without a currency"] = Edit(Outlet, "hx-two,CAD", "hx-two,", 4, "currency", null, BadCurrency, "ISO 4217"),
        ["a price with decimals"] = Edit(Outlet, "2450", "24.50", 2, "priceMinor", "24.50", BadNumber, "whole number"),
        ["a price below zero"] = Edit(Outlet, "2450", "-1", 2, "priceMinor", "-1", OutOfRange, "0 to"),
        ["a stock beyond reason"] = Edit(Outlet, ",0\n", ",1000001\n", 3, "stock", "1000001", OutOfRange, "0 to 1000000"),
        ["an outlet without the stock column"] = new(c => c.Set(Outlet, "partId,currency,priceMinor\nds-rate,CAD,5\n"), Outlet, 1, "stock", null, MissingColumn, "Empty cells"),
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
