using System.Xml.Linq;
using PartPicker.Api.Docs;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

public sealed class MathMarkupTests
{
    [Theory]
    [InlineData("x", "<mi>x</mi>")]
    [InlineData("0.05\\,a", "<mn>0.05</mn><mspace width=\"0.17em\"></mspace><mi>a</mi>")]
    [InlineData(@"\theta_{a2}", "<msub><mi>θ</mi><mrow><mi>a</mi><mn>2</mn></mrow></msub>")]
    [InlineData(@"N_a^2", "<msubsup><mi>N</mi><mi>a</mi><mn>2</mn></msubsup>")]
    [InlineData("T_1'", "<mrow><msub><mi>T</mi><mn>1</mn></msub><mo lspace=\"0\" rspace=\"0\">′</mo></mrow>")]
    [InlineData(@"\frac{D}{2}", "<mfrac><mrow><mi>D</mi></mrow><mrow><mn>2</mn></mrow></mfrac>")]
    [InlineData(@"\max_n(x)", "<munder><mi>max</mi><mi>n</mi></munder>")]
    [InlineData(@"a < b - 1", "<mo>&lt;</mo><mi>b</mi><mo>−</mo>")]
    [InlineData(@"\text{a <b}", "<mtext>a&#xA0;&lt;b</mtext>")]
    public void A_formula_becomes_MathML(string formula, string part)
    {
        string written = MathMarkup.Of(formula, onItsOwn: false);

        Assert.Equal("math", XElement.Parse(written).Name);
        Assert.Contains(part, written);
    }

    [Fact]
    public void A_formula_on_a_line_of_its_own_says_so() =>
        Assert.StartsWith("<math display=\"block\">", MathMarkup.Of("x", onItsOwn: true));

    [Theory]
    [InlineData(@"\integral x")]
    [InlineData("x_")]
    [InlineData(@"\frac{a")]
    [InlineData("a & b")]
    [InlineData(@"\left")]
    public void What_is_not_read_is_refused(string formula) =>
        Assert.Throws<FormatException>(() => MathMarkup.Of(formula, onItsOwn: false));
}
