namespace PartPicker.Tests.Selection;

/// <summary>The worst band and the worst likelihood over all machines drawn at random.</summary>
public sealed class BandFigures : IDisposable
{
    private double leastCover = 1;
    private double mostLikelihoodError;
    private int cases;
    private int draws;

    public void Add(int drawn, double cover, double likelihoodError)
    {
        leastCover = Math.Min(leastCover, cover);
        mostLikelihoodError = Math.Max(mostLikelihoodError, likelihoodError);
        cases++;
        draws += drawn;
    }

    public void Dispose()
    {
        if (cases > 0)
            Figures.Keep("bands", $"bands: cover {100 * leastCover:0.0} % or more of {draws / cases} draws in each of {cases} cases, likelihood off by {mostLikelihoodError:0.000} or less");
    }
}
