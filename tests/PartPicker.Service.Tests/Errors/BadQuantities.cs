using static PartPicker.Service.Tests.Errors.BadRequest;

namespace PartPicker.Service.Tests.Errors;

/// <summary>Quantities that cannot be read, or cannot be meant.</summary>
internal static class BadQuantities
{
    private const string At = "/altitude";

    public static readonly IReadOnlyDictionary<string, BadRequest> Cases = new Dictionary<string, BadRequest>
    {
        ["a bare number"] = Altitude("300", $"{At} unit-needed"),
        ["a bare negative number"] = Altitude("-1.5e2", $"{At} unit-needed"),
        ["a number as text"] = Altitude("\"300\"", $"{At} unit-needed"),
        ["empty text"] = Altitude("\"\"", $"{At} unreadable-quantity"),
        ["blank text"] = Altitude("\"  \\t\"", $"{At} unreadable-quantity"),
        ["a unit alone"] = Altitude("\"m\"", $"{At} unreadable-quantity"),
        ["the unit first"] = Altitude("\"m 300\"", $"{At} unreadable-quantity"),
        ["not a number"] = Altitude("\"NaN m\"", $"{At} unreadable-quantity"),
        ["infinity"] = Altitude("\"Infinity m\"", $"{At} unreadable-quantity"),
        ["the sign of infinity"] = Altitude("\"∞ m\"", $"{At} unreadable-quantity"),
        ["a number beyond a double"] = Altitude("\"1e400 m\"", $"{At} unreadable-quantity"),
        ["a decimal comma"] = Altitude("\"1,5 m\"", $"{At} unreadable-quantity"),
        ["thousands by comma"] = Altitude("\"1,500 m\"", $"{At} unreadable-quantity"),
        ["thousands by space"] = Altitude("\"1 500 m\"", $"{At} unreadable-quantity"),
        ["two points"] = Altitude("\"1.2.3 m\"", $"{At} unreadable-quantity"),
        ["two signs"] = Altitude("\"--1 m\"", $"{At} unreadable-quantity"),
        ["a hexadecimal number"] = Altitude("\"0x10 m\"", $"{At} unreadable-quantity"),
        ["digits of another script"] = Altitude("\"٣٠٠ m\"", $"{At} unreadable-quantity"),
        ["a unit of another kind"] = Altitude("\"10 kg\"", $"{At} unreadable-quantity"),
        ["a unit that nobody knows"] = Altitude("\"10 furlong\"", $"{At} unreadable-quantity"),
        ["a prefix by the wrong letter"] = Altitude("\"10 MM\"", $"{At} unreadable-quantity"),
        ["two units"] = Altitude("\"10 m m\"", $"{At} unreadable-quantity"),
        ["a fraction of a metre"] = Altitude("\"1 1/2 m\"", $"{At} unreadable-quantity"),
        ["a fraction over zero"] = Altitude("\"1/0 in\"", $"{At} unreadable-quantity"),
        ["a control character"] = Altitude("\"300\\u0000 m\"", $"{At} unreadable-quantity"),
        ["text beyond all measure"] = Altitude($"\"{new string('3', 100)} m\"", $"{At} unreadable-quantity"),
        ["true"] = Altitude("true", $"{At} wrong-type"),
        ["null"] = Altitude("null", $"{At} wrong-type"),
        ["an array"] = Altitude("[\"300 m\"]", $"{At} wrong-type"),
        ["an empty object"] = Altitude("{}", $"{At}/value missing-member", $"{At}/unit missing-member"),
        ["a value as text"] = Altitude("""{ "value": "300", "unit": "m" }""", $"{At}/value wrong-type"),
        ["a value without a unit"] = Altitude("""{ "value": 300 }""", $"{At}/unit missing-member"),
        ["a unit without a value"] = Altitude("""{ "unit": "m" }""", $"{At}/value missing-member"),
        ["an empty unit"] = Altitude("""{ "value": 300, "unit": "" }""", $"{At}/unit out-of-range"),
        ["a value beyond a double"] = Altitude(
            """{ "value": 1e400, "unit": "m" }""", $"{At}/value out-of-range"),
        ["a value of another kind"] = Altitude(
            """{ "value": 300, "unit": "psi" }""", $"{At} unreadable-quantity"),
        ["a member too many"] = Altitude(
            """{ "value": 300, "unit": "m", "digits": 2 }""", $"{At}/digits unknown-member"),
        ["a value twice"] = Altitude(
            """{ "value": 300, "value": 301, "unit": "m" }""", $"{At}/value duplicate-member"),
        ["higher than the model goes"] = Altitude("\"6000.1 m\"", $"{At} out-of-range"),
        ["higher in feet"] = Altitude("\"20000 ft\"", $"{At} out-of-range"),
        ["lower than any land"] = Altitude("\"-501 m\"", $"{At} out-of-range"),
        ["colder than any place"] = Prediction(
            "valley-two-seater", "\"temperature\": \"-80 °F\"", "/temperature out-of-range"),
        ["warmer than any place"] = Prediction(
            "valley-two-seater", "\"temperature\": \"400 K\"", "/temperature out-of-range"),
        ["higher than the troposphere"] = Altitude("\"40000 m\"", $"{At} out-of-range"),
        ["a unit for roads"] = Altitude("\"40 km\"", $"{At} unreadable-quantity"),
        ["colder than absolute zero"] = Prediction(
            "valley-two-seater", "\"temperature\": \"-300 °C\"", "/temperature out-of-range"),
        ["more vapour than air can hold"] = Prediction(
            "valley-two-seater", "\"relativeHumidity\": \"150 %\"", "/relativeHumidity out-of-range"),
        ["a humidity below nothing"] = Prediction(
            "valley-two-seater", "\"relativeHumidity\": \"-1 %\"", "/relativeHumidity out-of-range"),
        ["a humidity that may be a share"] = Prediction(
            "valley-two-seater", "\"relativeHumidity\": 0.6", "/relativeHumidity unit-needed"),
        ["a humidity in grams"] = Prediction(
            "valley-two-seater", "\"relativeHumidity\": \"8 g\"", "/relativeHumidity unreadable-quantity"),
        ["a run in air that cannot be"] = Prediction(
            "valley-two-seater",
            """ "baseline": { "engagementRpm": 2040, "shiftRpm": 7850, "temperature": "-300 °C", "relativeHumidity": "101 %" } """,
            "/baseline/temperature out-of-range", "/baseline/relativeHumidity out-of-range"),
        ["a temperature without its unit"] = Prediction(
            "valley-two-seater", "\"temperature\": 20", "/temperature unit-needed"),
        ["a temperature in metres"] =
            Prediction("valley-two-seater", "\"temperature\": \"20 m\"", "/temperature unreadable-quantity"),
        ["masses of four wrong kinds"] = Prediction(
            "valley-two-seater",
            """ "parts": { "stationMasses": { "heel": 4, "middle": "4 mm", "tip": "-1 g", "pin": "3.6 oz" } } """,
            "/parts/stationMasses/pin out-of-range", "/parts/stationMasses/heel unit-needed",
            "/parts/stationMasses/middle unreadable-quantity", "/parts/stationMasses/tip out-of-range"),
        ["a station that no arm has"] = Prediction(
            "valley-two-seater", """ "parts": { "stationMasses": { "toe": "4 g" } } """,
            "/parts/stationMasses/toe unknown-member"),
        ["a speed without its unit"] = Target(
            "canyon-racer", """ "engagementRpm": 2150, "speedCurve": [{ "speed": 40, "rpm": 8000 }] """,
            "/targets/speedCurve/0/speed unit-needed"),
        ["a speed backwards"] = Target(
            "canyon-racer", """ "engagementRpm": 2150, "speedCurve": [{ "speed": "-1 mph", "rpm": 8000 }] """,
            "/targets/speedCurve/0/speed out-of-range"),
        ["a speed beyond any machine"] = Target(
            "canyon-racer", """ "engagementRpm": 2150, "speedCurve": [{ "speed": "541 km/h", "rpm": 8000 }] """,
            "/targets/speedCurve/0/speed out-of-range"),
        ["a speed in rpm"] = Target(
            "canyon-racer", """ "engagementRpm": 2150, "speedCurve": [{ "speed": "40 rpm", "rpm": 8000 }] """,
            "/targets/speedCurve/0/speed unreadable-quantity"),
    };
}
