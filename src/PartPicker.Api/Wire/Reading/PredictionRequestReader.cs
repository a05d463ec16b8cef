using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>Reads what a prediction is asked for: from JSON as sent to what it means.</summary>
internal static class PredictionRequestReader
{
    /// <summary>The request; null when the list holds why not.</summary>
    public static PredictionRequest? Read(JsonElement json, CatalogSnapshot catalog, FaultList faults)
    {
        if (ObjectReader.Open(json, "", faults) is not { } body)
            return null;
        RequestReader common = new(catalog, faults);

        MachineProfile? machine = common.Machine(body);
        SetBasis delivered = SetBasis.Of(machine);
        PartSet? parts = common.Set(body, "parts", delivered);
        // A run is measured with what is fitted, which need not be the set that is asked about.
        Baseline? baseline = common.Baseline(body, delivered);
        bool anchor = RequestReader.Anchor(body, faults);
        AirState air = RequestReader.Air(body);
        AirLaw airLaw = body.Word<AirLaw>("airLaw") ?? AirLaw.SaeJ1349;
        int pointCount = body.Count("ratioPoints", RequestLimits.MinRatioPoints, RequestLimits.MaxRatioPoints)
            ?? PickRequest.StandardPointCount;
        IReadOnlyList<string> explain = Explain(body, pointCount, faults);
        body.RefuseOthers();

        if (faults.Count > 0)
            return null;
        return new PredictionRequest
        {
            Machine = machine!,
            Parts = parts,
            Baseline = baseline,
            Anchor = anchor,
            Air = air,
            AirLaw = airLaw,
            PointCount = pointCount,
            Explain = explain,
        };
    }

    private static string[] Explain(ObjectReader body, int pointCount, FaultList faults)
    {
        string[] known = [.. ExplainedNames.Of(pointCount)];
        string expected = $"one of: {string.Join(", ", ExplainedNames.OfAll)}; or, with 1 to {pointCount} for the point, "
            + string.Join(", ", ExplainedNames.At(1));
        List<string> names = [];
        foreach ((JsonElement item, string pointer) in
            body.List("explain", 0, RequestLimits.MaxExplained, $"an array; each entry {expected}") ?? [])
        {
            if (item.ValueKind != JsonValueKind.String)
                faults.Add(ErrorCodes.WrongType, pointer, item.GetRawText(), expected);
            else if (!known.Contains(item.GetString()))
                faults.Add(ErrorCodes.UnknownWord, pointer, item.GetString()!, expected + Nearest.Hint(item.GetString()!, known));
            else
                names.Add(item.GetString()!);
        }

        return [.. names.Distinct()];
    }
}
