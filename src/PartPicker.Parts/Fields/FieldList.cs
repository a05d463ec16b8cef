using UnitsNet;

namespace PartPicker.Parts;

/// <summary>Collects the fields of one kind, one line a field.</summary>
internal sealed class FieldList<T>(ItemKind kind) where T : CatalogItem
{
    private readonly List<Field> fields = [];

    public IReadOnlyList<Field> Fields => fields;

    public FieldList<T> Quantity(
        string name, QuantityInfo dimension, double min, double max,
        Func<T, double?> get, Func<T, double, T> set, string sentence, bool required = false)
    {
        fields.Add(new Field(kind, name, FieldShape.Quantity, sentence)
        {
            Dimension = dimension,
            Min = min,
            Max = max,
            Required = required,
            Get = item => get((T)item),
            Set = (item, value) => set((T)item, (double)value),
        });
        return this;
    }

    public FieldList<T> Number(
        string name, double min, double max,
        Func<T, double?> get, Func<T, double, T> set, string sentence, bool required = false, double? standard = null)
    {
        fields.Add(new Field(kind, name, FieldShape.Number, sentence)
        {
            Min = min,
            Max = max,
            Required = required,
            Default = standard,
            Get = item => get((T)item),
            Set = (item, value) => set((T)item, (double)value),
        });
        return this;
    }

    public FieldList<T> Count(
        string name, int min, int max, Func<T, int?> get, Func<T, int, T> set, string sentence, bool required = false)
    {
        fields.Add(new Field(kind, name, FieldShape.Count, sentence)
        {
            Min = min,
            Max = max,
            Required = required,
            Get = item => get((T)item),
            Set = (item, value) => set((T)item, (int)value),
        });
        return this;
    }

    public FieldList<T> Text(
        string name, int maxLength, Func<T, string?> get, Func<T, string, T> set, string sentence, bool required = false)
    {
        fields.Add(new Field(kind, name, FieldShape.Text, sentence)
        {
            Max = maxLength,
            Required = required,
            Get = item => get((T)item),
            Set = (item, value) => set((T)item, (string)value),
        });
        return this;
    }

    public FieldList<T> Choice<TChoice>(
        string name, Func<T, TChoice?> get, Func<T, TChoice, T> set, string sentence, TChoice? standard = null)
        where TChoice : struct, Enum
    {
        fields.Add(new Field(kind, name, FieldShape.Choice, sentence)
        {
            ChoiceType = typeof(TChoice),
            Default = standard,
            Get = item => get((T)item),
            Set = (item, value) => set((T)item, (TChoice)value),
        });
        return this;
    }

    public FieldList<T> Reference(
        string name, ItemKind refersTo, Func<T, string?> get, Func<T, string, T> set, string sentence)
    {
        fields.Add(new Field(kind, name, FieldShape.Reference, sentence)
        {
            RefersTo = refersTo,
            Required = true,
            Max = CatalogItem.MaxIdLength,
            Get = item => get((T)item),
            Set = (item, value) => set((T)item, (string)value),
        });
        return this;
    }

    public FieldList<T> Curve(
        string name, Axis x, Axis y, int minPoints,
        Func<T, IReadOnlyList<CurvePoint>?> get, Func<T, IReadOnlyList<CurvePoint>, T> set,
        string sentence, bool required = false)
    {
        fields.Add(new Field(kind, name, FieldShape.Curve, sentence)
        {
            XDimension = x.Dimension,
            XRange = (x.Min, x.Max),
            XScale = x.Scale,
            Dimension = y.Dimension,
            Min = y.Min,
            Max = y.Max,
            YScale = y.Scale,
            MinPoints = minPoints,
            Required = required,
            Get = item => get((T)item),
            Set = (item, value) => set((T)item, (IReadOnlyList<CurvePoint>)value),
        });
        return this;
    }

    public FieldList<T> Quantities(
        string name, QuantityInfo dimension, double min, double max,
        Func<T, IReadOnlyList<double>?> get, Func<T, IReadOnlyList<double>, T> set, string sentence)
    {
        fields.Add(new Field(kind, name, FieldShape.Quantities, sentence)
        {
            Dimension = dimension,
            Min = min,
            Max = max,
            Get = item => get((T)item),
            Set = (item, value) => set((T)item, (IReadOnlyList<double>)value),
        });
        return this;
    }

    public FieldList<T> Holes(
        string name, double minDeg, double maxDeg,
        Func<T, IReadOnlyList<SpringHole>?> get, Func<T, IReadOnlyList<SpringHole>, T> set, string sentence)
    {
        fields.Add(new Field(kind, name, FieldShape.Holes, sentence)
        {
            Min = minDeg,
            Max = maxDeg,
            Required = true,
            Get = item => get((T)item),
            Set = (item, value) => set((T)item, (IReadOnlyList<SpringHole>)value),
        });
        return this;
    }
}

/// <summary>One axis of a curve field: dimension (null for bare numbers), range in SI, factor of bare numbers to SI.</summary>
internal readonly record struct Axis(QuantityInfo? Dimension, double Min, double Max, double Scale = 1);
