namespace PartPicker.Service.Tests;

/// <summary>A folder that goes with the test.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("part-picker-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
