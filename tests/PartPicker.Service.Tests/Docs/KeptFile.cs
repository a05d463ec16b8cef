namespace PartPicker.Service.Tests.Docs;

/// <summary>
/// A file of the repository that must equal what the service says now. With PART_PICKER_REFRESH=1 it is written
/// instead of compared, and git shows what changed.
/// </summary>
public static class KeptFile
{
    public const string RefreshVariable = "PART_PICKER_REFRESH";

    public const string HowTo =
        "If the change is meant, run tests/tools/refresh-kept-files.sh and look at the difference.";

    public static bool Refreshing => Environment.GetEnvironmentVariable(RefreshVariable) == "1";

    /// <summary>What the file holds; when refreshing, what it is to hold.</summary>
    public static string Read(string path, string now)
    {
        if (Refreshing)
            File.WriteAllText(path, now);
        return File.Exists(path) ? File.ReadAllText(path) : "";
    }
}
