using System.Collections;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>The driven side's choices, kept as three small numbers each.</summary>
internal sealed class DrivenPool : IReadOnlyList<DrivenChoice>
{
    private readonly int[] codes;
    private readonly int holeCount;
    private readonly int helixCount;

    private DrivenPool(
        IReadOnlyList<DrivenSpring> springs, IReadOnlyList<SpringHole> holes, IReadOnlyList<Helix> helices, int[] codes)
    {
        Springs = springs;
        Holes = holes;
        Helices = helices;
        this.codes = codes;
        holeCount = holes.Count;
        helixCount = helices.Count;
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
        var codes = new int[springs.Count * holes.Count * helices.Count];
        int count = 0;
        int code = 0;
        foreach (DrivenSpring spring in springs)
        {
            foreach (SpringHole hole in holes)
            {
                foreach (Helix helix in helices)
                {
                    if (accepts(new DrivenChoice(spring, hole, helix)))
                        codes[count++] = code;
                    code++;
                }
            }
        }

        Array.Resize(ref codes, count);
        return new DrivenPool(springs, holes, helices, codes);
    }

    /// <summary>Places of an item's spring, hole and helix in their lists.</summary>
    public (int Spring, int Hole, int Helix) Code(int item) => Split(codes[item]);

    /// <summary>The same in one number, which rises with the item.</summary>
    public int Joint(int item) => codes[item];

    /// <summary>Places of spring, hole and helix.</summary>
    public (int Spring, int Hole, int Helix) Split(int joint)
    {
        (int springAndHole, int helix) = Math.DivRem(joint, helixCount);
        (int spring, int hole) = Math.DivRem(springAndHole, holeCount);
        return (spring, hole, helix);
    }

    /// <summary>The item with these places.</summary>
    public int ItemOf(int joint) => Array.BinarySearch(codes, joint);

    public IEnumerator<DrivenChoice> GetEnumerator() => Enumerable.Range(0, Count).Select(i => this[i]).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
