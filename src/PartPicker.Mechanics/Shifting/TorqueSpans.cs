namespace PartPicker.Mechanics;

/// <summary>Least and greatest torque over spans of so many scan steps each, one beside the other.</summary>
internal sealed class TorqueSpans
{
    private readonly (double Least, double Greatest)[] ranges;

    /// <param name="torqueAtStep">Torque at every step.</param>
    /// <param name="length">Steps of a span.</param>
    public TorqueSpans(double[] torqueAtStep, int length)
    {
        Length = length;
        ranges = new (double, double)[torqueAtStep.Length / length];
        for (int i = 0; i < ranges.Length; i++)
        {
            (double least, double greatest) = (double.PositiveInfinity, double.NegativeInfinity);
            foreach (double torque in torqueAtStep.AsSpan(i * length, length))
                (least, greatest) = (Math.Min(least, torque), Math.Max(greatest, torque));
            ranges[i] = (least, greatest);
        }
    }

    /// <summary>Steps of a span.</summary>
    public int Length { get; }

    /// <summary>The range over the span that a step lies in; false where the last steps are too few for one.</summary>
    public bool TryAround(int step, out (double Least, double Greatest) range)
    {
        bool known = step / Length < ranges.Length;
        range = known ? ranges[step / Length] : default;
        return known;
    }
}
