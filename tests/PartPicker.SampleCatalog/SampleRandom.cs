using System.Text;

namespace PartPicker.SampleCatalog;

/// <summary>A stream of draws that is the same on every machine and with every version of the framework.</summary>
/// <remarks>SplitMix64: Steele, Lea, Flood, Fast splittable pseudorandom number generators, 2014.</remarks>
internal sealed class SampleRandom
{
    private ulong state;

    /// <param name="seed">The seed of the whole catalog.</param>
    /// <param name="stream">
    /// Each class of parts has a stream of its own, so that a class that is added or grown leaves the others as
    /// they were.
    /// </param>
    public SampleRandom(int seed, string stream)
    {
        // FNV-1a, 64 bits.
        state = 14_695_981_039_346_656_037;
        foreach (byte part in Encoding.UTF8.GetBytes($"{seed}/{stream}"))
            state = (state ^ part) * 1_099_511_628_211;
    }

    public double Between(double least, double greatest) => least + (greatest - least) * Unit();

    public double In(Span span) => Between(span.From, span.To);

    /// <summary>A whole number, both ends included.</summary>
    public int Whole(int least, int greatest) => least + (int)(Next() % (ulong)(greatest - least + 1));

    public bool OneIn(int count) => Next() % (ulong)count == 0;

    public T Pick<T>(IReadOnlyList<T> choices) => choices[Whole(0, choices.Count - 1)];

    private double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    private ulong Next()
    {
        state += 0x9E3779B97F4A7C15;
        ulong z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}

/// <summary>From where to where a number is drawn.</summary>
internal readonly record struct Span(double From, double To);
