using System.Globalization;
using CsCheck;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Properties;

public class QuantityProperties
{
    private static readonly CultureInfo[] Cultures =
        [.. new[] { "en-GB", "de-DE", "fr-FR", "de-CH", "sv-SE" }.Select(CultureInfo.GetCultureInfo)];

    private static readonly Gen<decimal> Amounts =
        Gen.Select(Gen.Long[-999_999_999_999, 999_999_999_999], Gen.Int[0, 3], (units, scale) => new decimal(units) / Power(scale));

    private static readonly Gen<decimal> Densities = Gen.Int[100, 5000].Select(thousandths => thousandths / 1000m);

    [Fact]
    public void Text_FormattedForEditing_ReadsBackAsItself() =>
        Gen.Select(Amounts, Gen.OneOf(Cultures)).Sample((value, culture) =>
            AssertReads(value, QuantityFormat.Editable(value, culture), culture));

    [Fact]
    public void Text_FormattedWithGrouping_ReadsBackAsItself() =>
        Gen.Select(Amounts, Gen.OneOf(Cultures)).Sample((value, culture) =>
            AssertReads(value, QuantityFormat.Number(value, culture, 3), culture));

    [Fact]
    public void Text_AnyCharacters_NeverThrow() =>
        Gen.Select(Gen.String[0, 70], Gen.OneOf('.', ',')).Sample((text, mark) =>
            Assert.NotNull(QuantityText.Parse(text, new QuantityTextOptions(mark))));

    [Fact]
    public void Text_NumberLikeCharacters_NeverThrow() =>
        Gen.Select(Gen.Char["0123456789.,' -+e%ozglpart\uFF11\u221E"].Array[0, 40], Gen.OneOf('.', ',')).Sample((chars, mark) =>
            Assert.NotNull(QuantityText.Parse(new string(chars), new QuantityTextOptions(mark, AllowNegative: true))));

    [Fact]
    public void Conversion_ToStockAndBack_LosesLessThanHalfAMilligram() =>
        Gen.Select(Gen.Long[1, 999_999_999], Gen.OneOf(AmountUnits.All.Where(unit => !AmountUnits.IsCount(unit)).ToArray()), Densities)
            .Sample((thousandths, unit, grams) =>
            {
                var density = new Density(grams);
                decimal quantity = thousandths / 1000m;
                ConversionResult result = AmountConversion.ToStock(quantity, unit, StockUnit.Gram, density);
                if (result is ConversionResult.OutOfRange)
                {
                    Assert.Equal(AmountUnit.Milligram, unit);
                    Assert.True(quantity < 0.5m);
                    return;
                }

                StockAmount stock = Assert.IsType<ConversionResult.Converted>(result).Amount;
                decimal back = AmountConversion.FromStock(stock, unit, density)!.Value;
                decimal gramsPerUnit = AmountUnits.Factor(unit) * (AmountUnits.IsVolume(unit) ? grams : 1m);
                Assert.True(Math.Abs(back - quantity) * gramsPerUnit <= 0.000500001m);
            });

    [Fact]
    public void Density_MassOfVolumeOf_RoundTrips() =>
        Gen.Select(Gen.Long[0, 10_000_000_000], Densities).Sample((milligrams, grams) =>
        {
            var density = new Density(grams);
            var mass = Mass.FromMilligrams(milligrams);
            Assert.Equal(mass, density.MassOf(density.VolumeOf(mass)));
        });

    [Fact]
    public void Mass_SumAndDifference_AreExact() =>
        Gen.Select(Gen.Long[-1_000_000_000_000, 1_000_000_000_000], Gen.Long[-1_000_000_000_000, 1_000_000_000_000]).Sample((a, b) =>
        {
            var (left, right) = (Mass.FromMilligrams(a), Mass.FromMilligrams(b));
            Assert.Equal(left, left + right - right);
            Assert.Equal(left.Grams + right.Grams, (left + right).Grams);
            Assert.Equal(left, Mass.FromGrams(left.Grams));
        });

    private static void AssertReads(decimal value, string text, CultureInfo culture)
    {
        var options = new QuantityTextOptions(
            QuantityFormat.DecimalMark(culture), AllowNegative: true, Largest: 1_000_000_000_000m);
        var read = Assert.IsType<QuantityReading.Read>(QuantityText.Parse(text, options));
        Assert.Equal(value, read.Value);
    }

    private static decimal Power(int scale) => scale switch { 0 => 1m, 1 => 10m, 2 => 100m, _ => 1000m };
}
