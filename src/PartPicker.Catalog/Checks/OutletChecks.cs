using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Outlets sell parts of the catalog, and labour is that of outlets.</summary>
internal static class OutletChecks
{
    public static void Check(CatalogDraft draft)
    {
        foreach (DraftOutlet outlet in draft.Outlets)
        {
            foreach ((string id, int line) in outlet.Lines)
            {
                if (ReferenceChecks.Wrong(draft, id, kind: null) is { } refusal)
                    draft.Findings.Add(outlet.File, line, "partId", id, refusal);
            }
        }

        var outlets = draft.Outlets.Select(o => o.Outlet.Id).ToHashSet(StringComparer.Ordinal);
        foreach (((string outlet, Slot _), DraftLabour labour) in draft.Labour)
        {
            if (outlets.Contains(outlet))
                continue;
            draft.Findings.Add(labour.File, labour.Line, "outlet", outlet, new(
                FindingCodes.UnknownReference,
                "No file in outlets/ has this name. Check the spelling, or add the file."));
        }
    }
}
