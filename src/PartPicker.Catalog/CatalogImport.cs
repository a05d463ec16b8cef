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

        // Step 2. Judge each item by itself. One that was not read whole would be judged unfairly.
        foreach (DraftItem item in draft.Items.Where(i => i.Sound))
            ItemChecks.Check(item, draft.Findings);

        // Step 3. Follow ids from item to item. Where a file was not read whole, an id that seems missing
        // may be in it.
        if (draft.Complete)
            ReferenceChecks.Check(draft);

        return draft.Findings.Count > 0
            ? new ImportResult(null, draft.Findings.Listed())
            : new ImportResult(draft.Contents(), []);
    }

    private static void ReadFile(FolderFile file, CatalogDraft draft)
    {
        if (TextFile.Read(file, draft.Findings) is not { } text)
        {
            draft.Complete = false;
            return;
        }

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
            default:
                throw new InvalidOperationException($"No reader for {file.Content}.");
        }
    }
}
