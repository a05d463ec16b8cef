using PartPicker.Mechanics;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>Makes the nodes of one tree. A value is taken apart where it first stands; later it stands alone.</summary>
internal sealed class TreeNodes
{
    private readonly HashSet<string> apart;
    private readonly string prefix;

    public TreeNodes()
        : this([], "")
    {
    }

    private TreeNodes(HashSet<string> apart, string prefix)
    {
        this.apart = apart;
        this.prefix = prefix;
    }

    /// <summary>Nodes of the same tree for another state of the machine: their names begin with its word.</summary>
    public TreeNodes Within(string state) => new(apart, $"{prefix}{state}/");

    /// <summary>A computed quantity (SI).</summary>
    public ExplainedValue Of(
        string name, double si, QuantityInfo dimension, Relation relation, Func<IEnumerable<ExplainedValue>> parts) =>
        Node(name, si, dimension, "", relation, parts);

    /// <summary>A computed number.</summary>
    public ExplainedValue Of(
        string name, double value, string unit, Relation relation, Func<IEnumerable<ExplainedValue>> parts) =>
        Node(name, value, null, unit, relation, parts);

    /// <summary>An input that is of this state alone.</summary>
    public ExplainedValue Input(string name, double si, QuantityInfo dimension) =>
        new(prefix + name, si, dimension, "", null, []);

    /// <inheritdoc cref="Input(string, double, QuantityInfo)"/>
    public ExplainedValue Input(string name, double value, string unit = "") =>
        new(prefix + name, value, null, unit, null, []);

    /// <summary>A field of the catalog, the same in every state.</summary>
    public static ExplainedValue Field(string name, double si, QuantityInfo dimension) =>
        new(name, si, dimension, "", null, []);

    /// <inheritdoc cref="Field(string, double, QuantityInfo)"/>
    public static ExplainedValue Field(string name, double value, string unit = "") =>
        new(name, value, null, unit, null, []);

    /// <summary>A value that has a tree of its own.</summary>
    public static ExplainedValue Elsewhere(string name, double si, QuantityInfo dimension, Relation relation) =>
        new(name, si, dimension, "", Cited(relation), []);

    /// <inheritdoc cref="Elsewhere(string, double, QuantityInfo, Relation)"/>
    public static ExplainedValue Elsewhere(string name, double value, string unit, Relation relation) =>
        new(name, value, null, unit, Cited(relation), []);

    private ExplainedValue Node(
        string name, double value, QuantityInfo? dimension, string unit, Relation relation,
        Func<IEnumerable<ExplainedValue>> parts) =>
        new(prefix + name, value, dimension, unit, Cited(relation), apart.Add(prefix + name) ? [.. parts()] : []);

    private static CitedRelation Cited(Relation relation) =>
        new(relation.Name, relation.Equation, relation.Source, relation.Page);
}
