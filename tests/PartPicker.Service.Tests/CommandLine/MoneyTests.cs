using PartPicker.Api.CommandLine;
using PartPicker.Api.Wire;
using Xunit;

namespace PartPicker.Service.Tests.CommandLine;

public sealed class MoneyTests
{
    [Theory]
    [InlineData("EUR", 2450, "EUR 24.50")]
    [InlineData("USD", 5, "USD 0.05")]
    [InlineData("JPY", 2450, "JPY 2450")]
    [InlineData("KWD", 2450, "KWD 2.450")]
    [InlineData("CLF", 12345, "CLF 1.2345")]
    public void A_price_has_the_decimals_of_its_currency(string currency, long amountMinor, string text) =>
        Assert.Equal(text, Money.Text(new PriceWire { Currency = currency, AmountMinor = amountMinor }));

    [Fact]
    public void A_price_that_nobody_knows_is_said_to_be_so() => Assert.Equal("not known", Money.Text(null));
}
