using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Quantities;

public class QuantityTextTests
{
    private static readonly QuantityTextOptions Point = new('.');
    private static readonly QuantityTextOptions Comma = new(',');

    [Theory]
    [InlineData("1.5", "1.5")]
    [InlineData("1,5", "1.5")]
    [InlineData(" 480 ", "480")]
    [InlineData("3,320.0", "3320")]
    [InlineData("3.320,0", "3320")]
    [InlineData("3 320", "3320")]
    [InlineData("3\u00A0320,5", "3320.5")]
    [InlineData("3\u202F320.5", "3320.5")]
    [InlineData("3'320.5", "3320.5")]
    [InlineData("3\u2019320.5", "3320.5")]
    [InlineData("1,234,567", "1234567")]
    [InlineData("1.234.567", "1234567")]
    [InlineData("1,234,567.25", "1234567.25")]
    [InlineData(".5", "0.5")]
    [InlineData(",5", "0.5")]
    [InlineData("5.", "5")]
    [InlineData("0.500", "0.5")]
    [InlineData("0,500", "0.5")]
    [InlineData("1.50000", "1.5")]
    [InlineData("+2", "2")]
    [InlineData("007", "7")]
    [InlineData("\uFF11\uFF0E\uFF15", "1.5")]
    public void Parse_EitherMark_ReadsTheSameInBothCultures(string text, string expected)
    {
        foreach (QuantityTextOptions options in new[] { Point, Comma })
        {
            var read = Assert.IsType<QuantityReading.Read>(QuantityText.Parse(text, options));
            Assert.Equal(Numbers.Of(expected), read.Value);
            Assert.Null(read.Unit);
        }
    }

    [Theory]
    [InlineData("1,234", '.', "1234")]
    [InlineData("1,234", ',', "1.234")]
    [InlineData("3.320", '.', "3.32")]
    [InlineData("3.320", ',', "3320")]
    public void Parse_ThreeDigitsBehindALoneMark_IsDecidedByTheStudiosMarkAndSaysSo(string text, char mark, string expected)
    {
        var read = Assert.IsType<QuantityReading.Read>(QuantityText.Parse(text, new(mark)));
        Assert.Equal(Numbers.Of(expected), read.Value);
        Assert.NotNull(read.Interpretation);
        Assert.Contains(Numbers.Of(expected).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture).Replace('.', mark), read.Interpretation, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3.32 kg", "kg", AmountUnit.Kilogram)]
    [InlineData("3.32KG", "kg", AmountUnit.Kilogram)]
    [InlineData("2 fl  oz (us)", "fl oz (US)", AmountUnit.FluidOunceUs)]
    [InlineData("12 oz (weight)", "oz (weight)", AmountUnit.OunceWeight)]
    [InlineData("12 %w/w", "% w/w", null)]
    [InlineData("95 % vol", "% v/v", null)]
    [InlineData("8 % of wax", "% of wax", null)]
    [InlineData("20 drops", "drops", null)]
    [InlineData("190 US proof", "US proof", null)]
    [InlineData("1.5 parts by weight", "parts by weight", null)]
    public void Parse_NamedUnit_IsCarriedInOneSpelling(string text, string unit, AmountUnit? amountUnit)
    {
        var read = Assert.IsType<QuantityReading.Read>(QuantityText.Parse(text, Point));
        Assert.Equal(unit, read.Unit);
        Assert.Equal(amountUnit, read.AmountUnit);
    }

    [Theory]
    [InlineData("2 oz", "oz (weight)")]
    [InlineData("2 fl oz", "fl oz (US)")]
    [InlineData("90 proof", "US proof")]
    [InlineData("90 % proof", "US proof")]
    [InlineData("12 %", "% w/w")]
    [InlineData("12%", "% of wax")]
    [InlineData("1 part", "parts by volume")]
    [InlineData("1.5 parts", "parts by weight")]
    public void Parse_UnclearUnit_AsksAndEveryChoiceCanBeRead(string text, string choice)
    {
        var asks = Assert.IsType<QuantityReading.Asks>(QuantityText.Parse(text, Point));
        Assert.Contains(choice, asks.Choices);
        Assert.All(asks.Choices, unit =>
        {
            var read = Assert.IsType<QuantityReading.Read>(QuantityText.Parse($"7 {unit}", Point));
            Assert.Equal(unit, read.Unit);
        });
        Assert.EndsWith("?", asks.Question.Split('.')[0] + "?", StringComparison.Ordinal);
    }

    [Fact]
    public void Parse_BarePercentInAPercentField_IsTheFieldsUnit()
    {
        var read = Assert.IsType<QuantityReading.Read>(QuantityText.Parse("12 %", Point with { ShownUnit = "% of wax" }));
        Assert.Equal("% of wax", read.Unit);
        Assert.IsType<QuantityReading.Asks>(QuantityText.Parse("12 oz", Point with { ShownUnit = "oz (weight)" }));
    }

    [Theory]
    [InlineData("1e400")]
    [InlineData("1e3")]
    [InlineData("1E-28")]
    [InlineData("NaN")]
    [InlineData("\u221E")]
    [InlineData("-\u221E")]
    [InlineData("Infinity")]
    [InlineData("-0")]
    [InlineData("\u22125")]
    [InlineData("-1")]
    [InlineData("0.0000000000000000000000000001 g")]
    [InlineData("1.0001")]
    [InlineData("1.0000000000000000000000000000000001")]
    [InlineData("99999999999999999999999999999999")]
    [InlineData("1000000000.001")]
    [InlineData("\u0661\u0662")]
    [InlineData("1,23,456")]
    [InlineData("12,34.5")]
    [InlineData("1.2.3")]
    [InlineData("1..2")]
    [InlineData("3 32")]
    [InlineData("3 320'000")]
    [InlineData(",")]
    [InlineData("kg")]
    [InlineData("12 stone")]
    [InlineData("12 g 5")]
    [InlineData("=1+1")]
    [InlineData("1+1")]
    [InlineData("-2+3")]
    [InlineData("1\0")]
    [InlineData("\uD800")]
    [InlineData("1\u202E5")]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("1/2")]
    [InlineData("\u00BD")]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData(null)]
    public void Parse_HostileOrUnclear_IsUnreadableWithAReason(string? text)
    {
        foreach (QuantityTextOptions options in new[] { Point, Comma })
        {
            var unreadable = Assert.IsType<QuantityReading.Unreadable>(QuantityText.Parse(text, options));
            Assert.True(unreadable.Why.Length > 10, unreadable.Why);
        }
    }

    [Fact]
    public void Parse_TenMegabytes_IsRefusedAtOnce() =>
        Assert.IsType<QuantityReading.Unreadable>(QuantityText.Parse(new string('9', 10_000_000), Point));

    [Fact]
    public void Parse_MinusWhereAllowed_IsReadAndZeroLosesIt()
    {
        QuantityTextOptions signed = Point with { AllowNegative = true };
        Assert.Equal(-5m, Assert.IsType<QuantityReading.Read>(QuantityText.Parse("\u22125", signed)).Value);
        decimal zero = Assert.IsType<QuantityReading.Read>(QuantityText.Parse("-0.0", signed)).Value;
        Assert.Equal("0", zero.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture));
        Assert.False(decimal.IsNegative(zero));
    }

    [Fact]
    public void Parse_ZeroWhereRefused_SaysSo() =>
        Assert.IsType<QuantityReading.Unreadable>(QuantityText.Parse("0.0", Point with { AllowZero = false }));

    [Fact]
    public void Parse_WholeNumberField_RefusesDecimalsRatherThanRounding() =>
        Assert.IsType<QuantityReading.Unreadable>(QuantityText.Parse("2.5", Point with { MaxDecimals = 0 }));

    [Theory]
    [InlineData(';', 3)]
    [InlineData('.', 29)]
    [InlineData('.', -1)]
    public void Parse_ImpossibleOptions_Throw(char mark, int decimals) =>
        Assert.Throws<ArgumentException>(() => QuantityText.Parse("1", new(mark, MaxDecimals: decimals)));

    /// <summary>What a number shows by itself, whatever mark the studio has.</summary>
    [Theory]
    [InlineData("0.98", '.')]
    [InlineData("-0,980", ',')]
    [InlineData("1.5", '.')]
    [InlineData("1234,567", ',')]
    [InlineData("1.234,5", ',')]
    [InlineData("1,234.567", '.')]
    [InlineData("1.234.567", ',')]
    [InlineData("1 234.5", '.')]
    [InlineData("12.5 kg", '.')]
    [InlineData("1.234", null)]
    [InlineData("1,234 kg", null)]
    [InlineData("1234", null)]
    [InlineData("about 1.5", null)]
    [InlineData("", null)]
    public void ClearMark_ShownByTheNumber(string text, char? mark) => Assert.Equal(mark, QuantityText.ClearMark(text));

    [Fact]
    public void Parse_AsManyDecimalsAsADecimalHolds_LosesNone()
    {
        var fine = Point with { MaxDecimals = 28 };
        Assert.Equal(67.374285714285714285714285714m, Assert.IsType<QuantityReading.Read>(QuantityText.Parse("67.374285714285714285714285714", fine)).Value);
        Assert.Contains("more digits than can be kept", Assert.IsType<QuantityReading.Unreadable>(QuantityText.Parse("123456789.123456789012345678901", fine)).Why, StringComparison.Ordinal);
    }
}
