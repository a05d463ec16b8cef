namespace PartPicker.Tests.Mechanics;

/// <summary>The worst deviations over all agreement cases.</summary>
public sealed class AgreementFigures : IDisposable
{
    private double worstRpm;
    private double worstRelative;

    public void Add(double rpm, double relative)
    {
        worstRpm = Math.Max(worstRpm, rpm);
        worstRelative = Math.Max(worstRelative, relative);
    }

    public void Dispose() =>
        Figures.Keep("agreement", $"agreement: worst {worstRpm:0.0e0} rpm, worst {worstRelative:0.0e0} relative");
}
