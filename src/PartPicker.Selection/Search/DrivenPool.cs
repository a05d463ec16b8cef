using System.Collections;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>The driven side's choices, kept as three small numbers each.</summary>
internal sealed class DrivenPool : IReadOnlyList<DrivenChoice>
{
    private readonly int[] codes;

    private DrivenPool(
        IReadOnlyList<DrivenSpring> springs, IReadOnlyList<SpringHole> holes, IReadOnlyList<Helix> helices, int[] codes)
    {
        Springs = springs;
        Holes = holes;
        Helices = helices;
        this.codes = codes;
    }

    public IReadOnlyList<DrivenSpring> Springs { get; }

    public IReadOnlyList<SpringHole> Holes { get; }

    public IReadOnlyList<Helix> Helices { get; }

    public int Count => codes.Length;

    public DrivenChoice this[int index]
    {
        get
        {
            (int spring, int hole, int helix) = Code(index);
            return new DrivenChoice(Springs[spring], Holes[hole], Helices[helix]);
        }
    }

    /// <summary>Every accepted choice, by spring, hole and helix as they are listed.</summary>
    public static DrivenPool Of(
        IReadOnlyList<DrivenSpring> springs, IReadOnlyList<SpringHole> holes, IReadOnlyList<Helix> helices,
        Func<DrivenChoice, bool> accepts)
    {
        var codes = new List<int>();
        int code = 0;
        foreach (DrivenSpring spring in springs)
        {
            foreach (SpringHole hole in holes)
            {
                foreach (Helix helix in helices)
                {
                    if (accepts(new DrivenChoice(spring, hole, helix)))
                        codes.Add(code);
                    code++;
                }
            }
        }

        return new DrivenPool(springs, holes, helices, [.. codes]);
    }

    /// <summary>Places of an item's spring, hole and helix in their lists.</summary>
    public (int Spring, int Hole, int Helix) Code(int item)
    {
        int code = codes[item];
        return (code / (Holes.Count * Helices.Count), code / Helices.Count % Holes.Count, code % Helices.Count);
    }

    public IEnumerator<DrivenChoice> GetEnumerator() => Enumerable.Range(0, Count).Select(i => this[i]).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
