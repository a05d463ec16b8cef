using System.Globalization;

namespace PartPicker.Tests.Mechanics;

/// <summary>The worst deviations over all agreement cases; kept where PART_PICKER_FIGURES names a folder.</summary>
public sealed class AgreementFigures : IDisposable
{
    private double worstRpm;
    private double worstRelative;

    public void Add(double rpm, double relative)
    {
        worstRpm = Math.Max(worstRpm, rpm);
        worstRelative = Math.Max(worstRelative, relative);
    }

    public void Dispose()
    {
        if (Environment.GetEnvironmentVariable("PART_PICKER_FIGURES") is { Length: > 0 } folder)
        {
            File.WriteAllText(
                Path.Combine(folder, "agreement.txt"),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"agreement: worst {worstRpm:0.0e0} rpm, worst {worstRelative:0.0e0} relative\n"));
        }
    }
}
