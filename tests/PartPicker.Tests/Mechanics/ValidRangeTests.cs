using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>Spans of validity: their words and their edges.</summary>
public sealed class ValidRangeTests
{
    [Fact]
    public void A_span_says_its_ends_and_its_unit()
    {
        Assert.Equal("4 to 20", HelicalSpring.IndexRange.Span);
        Assert.Equal("10 to 20°", ValidRanges.GrooveHalfAngle.Span);
        Assert.Equal("up to 11000 m", ValidRanges.Altitude.Span);
        Assert.Equal("1 and more", ValidRanges.SlipMargin.Span);
        Assert.Equal("0.07 to 16 mm", SpringTolerance.WireRange.Span);

        // Three rows of the table, one after the other.
        Assert.Equal("0.3 to 10.16 mm", WireStrengthSet.Shigley.DiameterRange("stainless-302-a313").Span);
    }

    // What is stated in inches may miss the end of a span by its last digits; a millionth is no such miss.
    [Theory]
    [InlineData(4, true)]
    [InlineData(4 - 2e-9, true)]
    [InlineData(4 - 4e-6, false)]
    [InlineData(20, true)]
    [InlineData(20 + 1e-8, true)]
    [InlineData(20 + 2e-5, false)]
    [InlineData(double.NaN, false)]
    public void An_end_belongs_to_its_span_with_a_little_play(double value, bool holds) =>
        Assert.Equal(holds, HelicalSpring.IndexRange.Holds(value));

    [Fact]
    public void Nothing_is_an_end_too()
    {
        var span = new ValidRange("span", "a span", 0, 0, "", "", "");
        Assert.True(span.Holds(0));
        Assert.False(span.Holds(1e-12));
        Assert.False(span.Holds(-1e-12));
    }
}
