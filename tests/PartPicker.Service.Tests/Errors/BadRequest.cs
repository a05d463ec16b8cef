namespace PartPicker.Service.Tests.Errors;

/// <summary>A request with faults, and every one that must be told.</summary>
/// <param name="Address">Method, path and query.</param>
/// <param name="Body">JSON; null for none.</param>
/// <param name="Faults">"pointer code", in the order of the answer; the pointer of a whole body is empty.</param>
public sealed record BadRequest(string Address, string? Body, IReadOnlyList<string> Faults)
{
    /// <summary>A pick with these members instead of, or beside, what makes a sound one.</summary>
    public static BadRequest Pick(string members, params string[] faults) => new(
        "POST /v1/picks",
        $$"""
        {
          "machine": "valley-two-seater", "targets": { "engagementRpm": 2200, "shiftRpm": 7900 },
          {{members}}
        }
        """,
        faults);

    /// <summary>A pick for this machine, with these targets.</summary>
    public static BadRequest Target(string machine, string targets, params string[] faults) => new(
        "POST /v1/picks",
        $$"""
        {
          "machine": "{{machine}}", "targets": { {{targets}} }, "keep": ["driveSpring", "flyweight", "helix"]
        }
        """,
        faults);

    /// <summary>A prediction for this machine with these members beside.</summary>
    public static BadRequest Prediction(string machine, string members, params string[] faults) => new(
        "POST /v1/predictions", $$"""{ "machine": "{{machine}}", {{members}} }""", faults);

    /// <summary>An altitude as it stands in JSON.</summary>
    public static BadRequest Altitude(string json, params string[] faults) =>
        Prediction("valley-two-seater", $"\"altitude\": {json}", faults);

    /// <summary>An address that is asked for.</summary>
    public static BadRequest Get(string address, params string[] faults) => new("GET " + address, null, faults);
}
