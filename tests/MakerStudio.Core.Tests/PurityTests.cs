using System.Globalization;
using MakerStudio.Core.Bench;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Exchange;
using MakerStudio.Core.Quantities;
using MakerStudio.Core.Stock;

namespace MakerStudio.Core.Tests;

/// <summary>Core knows no database, page or current culture.</summary>
public class PurityTests
{
    private static readonly string[] Typed =
        ["1,5", "1.5", "1,234", "3.320 kg", "12 %", "2 OZ", "12 KILOS", "20 DROPS", "1e400", "1.00001", "95 % VOL", "12 FL OZ (IMP)"];

    [Fact]
    public void References_AreTheBaseLibraryOnly() => Assert.All(
        typeof(Mass).Assembly.GetReferencedAssemblies(),
        reference => Assert.StartsWith("System.", reference.Name, StringComparison.Ordinal));

    /// <summary>Turkish folds I without a dot, Persian writes other digits and marks, German swaps the marks, Thai counts other years.</summary>
    [Theory]
    [InlineData("tr-TR")]
    [InlineData("fa-IR")]
    [InlineData("de-DE")]
    [InlineData("sv-SE")]
    [InlineData("th-TH")]
    public void Results_DoNotDependOnTheCurrentCulture(string culture)
    {
        object?[] expected = Everything();
        CultureInfo before = CultureInfo.CurrentCulture;
        object?[] under;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            under = Everything();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Assert.Equal(expected.Length, under.Length);
        Assert.Equal(expected.Select(result => $"{result}"), under.Select(result => $"{result}"));
    }

    private static object?[] Everything()
    {
        var rest = new Guid("0193f2a0-0000-7000-8000-000000000001");
        var other = new Guid("0193f2a0-0000-7000-8000-000000000002");
        var off = (FormulationResult.CannotNormalise)Formulation.Normalise(
            [new(rest, 12.5m, LineBasis.PercentByWeight), new(other, 8.25m, LineBasis.PercentByWeight)]);
        var over = (FormulationResult.CannotNormalise)Formulation.Normalise(
            [new(rest, null, LineBasis.PercentByWeight), new(other, 100.25m, LineBasis.PercentByWeight)]);
        FinancialYear year = new FinancialYears(4, 6, TimeZoneInfo.Utc).Of(new DateOnly(2026, 11, 25));
        return
        [
            .. Typed.Select(text => QuantityText.Parse(text, new('.'))),
            .. Typed.Select(text => QuantityText.Parse(text, new(','))),
            off.Problems[0].Problem,
            over.Problems[0].Problem,
            Mass.FromGrams(-1234.5m).ToString(),
            StockAmount.OfGrams(1234.5m).ToString(),
            new Density(0.815m).ToString(),
            Magnitude.Question(Mass.FromGrams(3320), 3.32m)!.Sentence(CultureInfo.InvariantCulture),
            QuantityFormat.Mass(Mass.FromGrams(-3320.5m), CultureInfo.InvariantCulture),
            MethodOfYears.WhyNot(year, ValuationMethod.MovingAverage, year, [new(year.First, ValuationMethod.Fifo)]),
            CsvCell.Number(-1234.5m),
            CsvCell.Date(year.Last),
            CsvCell.Moment(new DateTimeOffset(2026, 11, 25, 12, 40, 9, TimeSpan.FromHours(-1))),
        ];
    }
}
