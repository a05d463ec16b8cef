using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>What a file of a catalog folder holds.</summary>
internal enum FileContent
{
    Parts,
    Machines,
    Outlet,
    Labour,
}

/// <summary>A file to read.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Name">Path below the catalog folder, as findings name it.</param>
/// <param name="Content">What it holds.</param>
/// <param name="Kind">The kind of its parts, for a file of parts.</param>
internal sealed record FolderFile(string Path, string Name, FileContent Content, ItemKind? Kind = null);

/// <summary>The layout of a catalog folder.</summary>
internal static class CatalogFolder
{
    private const string Machines = "machines";
    private const string Outlets = "outlets";
    private static readonly string[] Subfolders = [Machines, Outlets, "requests", "answers"];

    private const string Labour = "labour.csv";

    private static readonly Dictionary<string, ItemKind> PartFiles = new(StringComparer.Ordinal)
    {
        ["drive-springs.csv"] = ItemKind.DriveSpring,
        ["flyweights.csv"] = ItemKind.Flyweight,
        ["driven-springs.csv"] = ItemKind.DrivenSpring,
        ["helices.csv"] = ItemKind.Helix,
        ["belts.csv"] = ItemKind.Belt,
        ["shims.csv"] = ItemKind.Shim,
        ["kits.csv"] = ItemKind.Kit,
    };

    private static IEnumerable<string> Known => PartFiles.Keys.Append(Labour).Concat(Subfolders);

    /// <summary>The files to read, in an order that is the same on every machine.</summary>
    public static IReadOnlyList<FolderFile> List(string folder, Findings findings)
    {
        try
        {
            return Listed(folder, findings);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            findings.Add("", null, null, folder, new(
                FindingCodes.MissingFolder, $"The catalog folder cannot be read: {Why(e)}"));
            return [];
        }
    }

    // In words of our own: those of the system depend on it, and name no remedy.
    private static string Why(Exception e) => e switch
    {
        DirectoryNotFoundException => "it is not there. Check the path.",
        UnauthorizedAccessException => "this account may not list it. Give it the right to, or move the folder.",
        ArgumentException => "no folder can have this name. Check the path.",
        _ => "it is no folder, or its disk does not answer. Name the folder that holds the files.",
    };

    private static List<FolderFile> Listed(string folder, Findings findings)
    {
        List<FolderFile> files =
        [
            .. Top(folder, findings),
            .. Below(folder, Machines, ".json", FileContent.Machines, findings),
            .. Below(folder, Outlets, ".csv", FileContent.Outlet, findings),
        ];
        // A folder that is merely mistyped must not turn an import into an empty catalog.
        if (files.Count == 0)
        {
            findings.Add("", null, null, folder, new(
                FindingCodes.EmptyCatalog,
                $"The folder holds no catalog. Parts stand in {string.Join(", ", PartFiles.Keys)}, "
                + $"machines in {Machines}/*.json, stock in {Outlets}/*.csv."));
        }

        if (files.Count > ImportLimits.MaxFiles)
        {
            findings.Add("", null, null, folder, new(
                FindingCodes.TooManyFiles,
                $"The folder holds {files.Count} files; at most {ImportLimits.MaxFiles} are read. Join some."));
            return [];
        }

        return files;
    }

    private static IEnumerable<FolderFile> Top(string folder, Findings findings)
    {
        foreach (string path in Entries(folder))
        {
            string name = Path.GetFileName(path);
            bool isFolder = Directory.Exists(path);
            if (!isFolder && PartFiles.TryGetValue(name, out ItemKind kind))
                yield return new FolderFile(path, name, FileContent.Parts, kind);
            else if (!isFolder && name == Labour)
                yield return new FolderFile(path, name, FileContent.Labour);
            else if (isFolder ? !Subfolders.Contains(name) : IsData(name))
                RefuseFile(name, $"Known here: {string.Join(", ", Known)}.", findings);
        }
    }

    private static IEnumerable<FolderFile> Below(
        string folder, string subfolder, string ending, FileContent content, Findings findings)
    {
        string below = Path.Combine(folder, subfolder);
        if (!Directory.Exists(below))
            yield break;
        foreach (string path in Entries(below))
        {
            string name = $"{subfolder}/{Path.GetFileName(path)}";
            bool isFolder = Directory.Exists(path);
            if (!isFolder && name.EndsWith(ending, StringComparison.Ordinal))
                yield return new FolderFile(path, name, content);
            else if (isFolder || IsData(name))
                RefuseFile(name, $"Only *{ending} files stand in {subfolder}.", findings);
        }
    }

    // Hidden files and notes may lie about; what looks like data but is not read would be missed in silence.
    private static bool IsData(string name) =>
        Path.GetExtension(name).ToLowerInvariant()
            is ".csv" or ".json" or ".tsv" or ".txt" or ".xls" or ".xlsx" or ".ods";

    private static IEnumerable<string> Entries(string folder) => Directory.EnumerateFileSystemEntries(folder)
        .Where(path => !Path.GetFileName(path).StartsWith('.'))
        .Order(StringComparer.Ordinal);

    private static void RefuseFile(string name, string expected, Findings findings) =>
        findings.Add(name, null, null, null, new(
            FindingCodes.UnknownFile,
            $"The import does not know what this is. {expected} Rename it or move it away."));
}
