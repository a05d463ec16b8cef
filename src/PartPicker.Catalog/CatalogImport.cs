namespace PartPicker.Catalog;

/// <summary>Reads a catalog folder: everything, or nothing and every reason.</summary>
public static class CatalogImport
{
    /// <summary>Never throws for what the folder holds: whatever is wrong with it is a finding.</summary>
    public static ImportResult ReadFolder(string folder)
    {
        var draft = new CatalogDraft();

        // Step 1. Read each file by itself, so that one bad file does not hide what is wrong with the next.
        foreach (FolderFile file in CatalogFolder.List(folder, draft.Findings))
            ReadFile(file, draft);
        bool readWhole = draft.Findings.Count == 0;

        // Step 2. Judge each item by itself. One that was not read whole would be judged unfairly.
        foreach (DraftItem item in draft.Items.Where(i => i.Sound))
            ItemChecks.Check(item, draft.Findings);

        // Step 3. Follow the ids of whatever was read from item to item.
        ReferenceChecks.Check(draft);

        return draft.Findings.Count > 0
            ? new ImportResult(null, draft.Findings.Listed(), MoreMayFollow: !readWhole)
            : new ImportResult(draft.Contents(), [], MoreMayFollow: false);
    }

    private static void ReadFile(FolderFile file, CatalogDraft draft)
    {
        string? text = TextFile.Read(file, draft.Findings);
        switch (file.Content)
        {
            case FileContent.Parts:
                PartFile.Read(file, text, draft);
                break;
            case FileContent.Machines:
                MachineFile.Read(file.Name, text, draft);
                break;
            case FileContent.Outlet:
                OutletFile.Read(file, text, draft);
                break;
            case FileContent.Labour:
                if (text is not null)
                    LabourFile.Read(file, text, draft);
                break;
            default:
                throw new InvalidOperationException($"No reader for {file.Content}.");
        }
    }
}
