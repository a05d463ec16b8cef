using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>Reads what a pick is asked for: from JSON as sent to what it means.</summary>
internal static class PickRequestReader
{
    /// <summary>The request; null when the list holds why not.</summary>
    public static PickRequest? Read(JsonElement json, CatalogSnapshot catalog, FaultList faults)
    {
        if (ObjectReader.Open(json, "", faults) is not { } body)
            return null;
        RequestReader common = new(catalog, faults);

        MachineProfile? machine = common.Machine(body);
        ShiftTarget? target = Targets(body, faults);
        Tolerances tolerances = ReadTolerances(body);
        ScoreWeights weights = Weights(body, faults);
        SetBasis delivered = SetBasis.Of(machine);
        PartSet? fitted = common.Set(body, "fitted", delivered);
        Baseline? baseline = common.Baseline(
            body, new SetBasis(fitted, MustBeWhole: delivered.MustBeWhole && !body.Has("fitted")));
        bool anchor = RequestReader.Anchor(body, faults);
        AirState air = RequestReader.Air(body);
        AirLaw airLaw = body.Word<AirLaw>("airLaw") ?? AirLaw.SaeJ1349;
        IReadOnlyList<AirState> conditions = Conditions(body, faults);
        double? launchRpm = body.Number("launchRpm", RequestLimits.MinRpm, RequestLimits.MaxRpm);
        double launchMarginRpm = body.Number(
            "launchMarginRpm", RequestLimits.MinLaunchMarginRpm, RequestLimits.MaxLaunchMarginRpm)
            ?? PickRequest.StandardLaunchMarginRpm;
        if (body.Has("launchMarginRpm") && !body.Has("launchRpm"))
            body.RefuseMissing("launchRpm", "the launch rpm that launchMarginRpm is kept from, or neither of the two");
        double? slipMargin = body.Number("slipMargin", RequestLimits.MinSlipMargin, RequestLimits.MaxSlipMargin);
        IReadOnlySet<Slot> keep = body.WordSet<Slot>("keep") ?? new HashSet<Slot>();
        IReadOnlySet<string> exclude = common.Excluded(body);
        bool inStockOnly = body.Flag("inStockOnly") ?? false;
        long? priceCeiling = body.Count("priceCeilingMinor", 0, RequestLimits.MaxPriceMinor);
        bool demandChecked = body.Flag("demandChecked") ?? false;
        RankBy rankBy = body.Word<RankBy>("rankBy") ?? RankBy.Miss;
        bool group = body.Flag("group") ?? false;
        Outlet? outlet = common.Outlet(body);
        int count = body.Count("count", RequestLimits.MinCount, RequestLimits.MaxCount)
            ?? PickRequest.StandardCount;
        int pointCount = body.Count("ratioPoints", RequestLimits.MinRatioPoints, RequestLimits.MaxRatioPoints)
            ?? PickRequest.StandardPointCount;
        int refusals = body.Count("refusals", 0, RequestLimits.MaxRefusals) ?? PickRequest.MaxRefusalCount;
        int workLimit = body.Count("workLimit", 1, PickRequest.MaxWorkLimit) ?? PickRequest.StandardWorkLimit;
        body.RefuseOthers();

        if (faults.Count > 0)
            return null;
        return new PickRequest
        {
            Machine = machine!, Target = target!, Tolerances = tolerances, Weights = weights, Fitted = fitted,
            Baseline = baseline, Anchor = anchor, Air = air, AirLaw = airLaw, LaunchRpm = launchRpm,
            LaunchMarginRpm = launchMarginRpm, SlipMargin = slipMargin, Keep = keep, Exclude = exclude,
            InStockOnly = inStockOnly, PriceCeilingMinor = priceCeiling, DemandChecked = demandChecked, RankBy = rankBy,
            Group = group, Outlet = outlet, Count = count, PointCount = pointCount, RefusalCount = refusals,
            WorkLimit = workLimit, Conditions = conditions,
        };
    }

    private static ShiftTarget? Targets(ObjectReader body, FaultList faults)
    {
        if (body.Object("targets", "the rpm that are wanted, as an object", required: true) is not { } reader)
            return null;
        double? engagementRpm = reader.Number("engagementRpm", RequestLimits.MinRpm, RequestLimits.MaxRpm);
        double? engagementChangeRpm = reader.Number("engagementChangeRpm", -RequestLimits.MaxChangeRpm, RequestLimits.MaxChangeRpm);
        if (reader.Has("engagementRpm") && reader.Has("engagementChangeRpm"))
        {
            faults.Add(
                ErrorCodes.Contradiction, reader.At("engagementChangeRpm"), null,
                "either engagementRpm, or engagementChangeRpm against what is fitted");
        }

        ShiftGoal? goal = GoalReader.Read(reader, faults);
        reader.RefuseOthers();
        return goal is null ? null : new ShiftTarget(engagementRpm, goal) { EngagementChangeRpm = engagementChangeRpm };
    }

    private static List<AirState> Conditions(ObjectReader body, FaultList faults)
    {
        List<AirState> airs = [];
        foreach ((JsonElement item, string pointer) in
            body.List("conditions", 1, PickRequest.MaxConditions, "an array of airs: altitude, temperature, relativeHumidity") ?? [])
        {
            if (ObjectReader.Open(item, pointer, faults) is not { } reader)
                continue;
            airs.Add(RequestReader.Air(reader));
            reader.RefuseOthers();
        }

        return airs;
    }

    private static Tolerances ReadTolerances(ObjectReader body)
    {
        if (body.Object("tolerances", "rpm, as an object") is not { } reader)
            return Tolerances.Standard;
        double? engagement = reader.Number("engagementRpm", Tolerances.Min, Tolerances.Max);
        double? shift = reader.Number("shiftRpm", Tolerances.Min, Tolerances.Max);
        reader.RefuseOthers();
        return new Tolerances(
            engagement ?? Tolerances.Standard.EngagementRpm, shift ?? Tolerances.Standard.ShiftRpm);
    }

    private static ScoreWeights Weights(ObjectReader body, FaultList faults)
    {
        if (body.Object("weights", "shares that sum to 1, as an object") is not { } reader)
            return ScoreWeights.Standard;
        double? engagement = reader.Number("engagement", 0, 1, required: true);
        double? shift = reader.Number("shift", 0, 1, required: true);
        reader.RefuseOthers();
        if (engagement is not { } e || shift is not { } s)
            return ScoreWeights.Standard;
        if (Math.Abs(e + s - 1) > RequestLimits.WeightsSumSlack)
            faults.Add(ErrorCodes.WeightsSum, reader.Pointer, $"{e} + {s} = {e + s}", "two weights that sum to 1");
        return new ScoreWeights(e, s);
    }
}
