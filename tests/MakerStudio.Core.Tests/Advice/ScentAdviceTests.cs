using MakerStudio.Core.Advice;
using MakerStudio.Core.Assessing;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Materials;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;
using static MakerStudio.Core.Advice.ExampleLines;
using static MakerStudio.Core.Tests.Advice.AdviceCase;

namespace MakerStudio.Core.Tests.Advice;

public class ScentAdviceTests
{
    [Theory]
    [InlineData("15", "")]
    [InlineData("15.0001", "Warn")]
    [InlineData("2", "")]
    public void Load_AboveUsualOfSpray(string scent, string expected) => Assert.Equal(
        expected, Text(Kinds("load-above-usual", Spray(Oil(Numbers.Of(scent)), Alcohol(100m - Numbers.Of(scent))))));

    /// <summary>10 % of wax as the formula keeps it, 0.1/1.1 at 12 decimals, is 10 % and not more.</summary>
    [Theory]
    [InlineData("0.10", "", "")]
    [InlineData("0.1001", "Warn", "")]
    [InlineData("0.12", "Warn", "")]
    [InlineData("0.1201", "Warn", "Warn")]
    public void Load_OnWax_AtItsLimits(string ofWax, string aboveUsual, string aboveHold)
    {
        decimal scent = decimal.Round(WaxShare.OfTotal(Numbers.Of(ofWax)), 12, MidpointRounding.ToPositiveInfinity);
        AssessedFormula formula = Of(new ContainerCandle(), Oil(100m * scent), Wax(100m * (1 - scent)));
        Assert.Equal(aboveUsual, Text(Kinds("load-above-usual", formula)));
        Assert.Equal(aboveHold, Text(Kinds("wax-load", formula)));
    }

    [Fact]
    public void Load_OfAPreBlend_CountsByItsScentShare()
    {
        AssessedMaterial accord = OilMaterial with { Kind = MaterialKind.PreBlend, ScentShare = 0.5m };
        Assert.Empty(Kinds("load-above-usual", Spray(Line(accord, 30m), Alcohol(70m))));
        Assert.Equal([AdviceKind.Warn], Kinds("load-above-usual", Spray(Line(accord, 30.1m), Alcohol(69.9m))));
        Assert.Equal([AdviceKind.Warn], Kinds("load-above-usual", Spray(Line(accord with { ScentShare = null }, 16m), Alcohol(84m))));
    }

    [Fact]
    public void Load_OfAKindWithoutUsualRange_IsSilent() =>
        Assert.Empty(Kinds("load-above-usual", Of(new PreBlend(), Oil(100m))));

    [Theory]
    [InlineData("9", "")]
    [InlineData("9.001", "Warn")]
    public void Load_AboveEnoughOfOwnTrials(string scent, string expected)
    {
        AssessedFormula formula = Spray(Oil(Numbers.Of(scent)), Alcohol(100m - Numbers.Of(scent)));
        Assert.Equal(expected, Text(Kinds("load-above-enough", formula with { EnoughScent = 0.09m })));
        Assert.Empty(Kinds("load-above-enough", formula));
    }

    /// <summary>Trials of a candle are kept as a share of the wax, as its load is.</summary>
    [Fact]
    public void Load_EnoughOfACandle_IsOfWax()
    {
        AssessedFormula formula = Of(new ContainerCandle(), Oil(8m), Wax(92m)) with { EnoughScent = 0.085m }; // 8.7 % of wax
        Assert.Equal([AdviceKind.Warn], Kinds("load-above-enough", formula));
    }

    [Theory]
    [InlineData("5.99", "Note")]
    [InlineData("6", "Warn")]
    public void Citrus_FromHalfOfTheScent_Warns(string orange, string expected) => Assert.Equal(
        expected, Text(Kinds("citrus-oxidation", Spray(Line(Orange, Numbers.Of(orange)), Oil(12m - Numbers.Of(orange)), Alcohol(88m)))));

    [Theory]
    [InlineData("29.9", "")]
    [InlineData("30", "Warn")]
    public void Citrus_ByLimoneneOnTheSheet(string limonene, string expected)
    {
        AssessedMaterial oil = OilMaterial with { Composition = [new("limonene", "5989-27-5", Numbers.Of(limonene), Numbers.Of(limonene))] };
        Assert.Equal(expected, Text(Kinds("citrus-oxidation", Spray(Line(oil, 12m), Alcohol(88m)))));
    }

    [Fact]
    public void Citrus_WithAntioxidant_IsANote()
    {
        AssessedMaterial withBht = Orange with { Composition = [new("BHT", "128-37-0", 0.1m, 0.1m)] };
        Assert.Equal([AdviceKind.Note], Kinds("citrus-oxidation", Spray(Line(withBht, 12m), Alcohol(88m))));
        AssessedLine tocopherol = Line(Material("Mixed tocopherols", MaterialKind.Solvent), 0.1m);
        Assert.Equal([AdviceKind.Note], Kinds("citrus-oxidation", Spray(Line(Orange, 12m), tocopherol, Alcohol(87.9m))));
        Assert.Empty(Kinds("citrus-oxidation", Spray(Oil(12m), Alcohol(88m))));
    }

    [Theory]
    [InlineData("0", "", "")]
    [InlineData("0.9", "Note", "slightly yellow")]
    [InlineData("1", "Note", "tan")]
    [InlineData("4.99", "Note", "tan")]
    [InlineData("5", "Warn", "brown,")]
    [InlineData("9.99", "Warn", "brown,")]
    [InlineData("10", "Warn", "dark brown")]
    public void Vanillin_ByItsBands(string percent, string expected, string colour)
    {
        AssessedFormula formula = Spray(Line(OilMaterial with { VanillinPercent = Numbers.Of(percent) }, 12m), Alcohol(88m));
        AdviceGiven[] given = Given("vanillin-browning", formula);
        Assert.Equal(expected, Text([.. given.Select(each => each.Kind)]));
        Assert.All(given, each => Assert.Contains(" " + colour, each.ToString(), StringComparison.Ordinal));
    }

    [Fact]
    public void Vanillin_OfTheWholeScent_IsCounted()
    {
        AssessedMaterial vanilla = OilMaterial with { Id = Guid.Empty, VanillinPercent = null, Composition = [new("vanillin", "121-33-5", 8m, 12m), new("ethyl vanillin", "121-32-4", 2m, 2m)] };
        AdviceBasis basis = AdviceBasis.Of(Spray(Oil(6m), new(Guid.Empty, vanilla, 0.06m), Alcohol(88m)));
        Assert.Equal(0.06, basis.VanillinOfScent, 9); // half of the scent with 12 %
    }

    [Theory]
    [InlineData("0.99", "")]
    [InlineData("1", "Note")]
    [InlineData("4.99", "Note")]
    [InlineData("5", "Warn")]
    public void VanillinWick_AtItsLimits(string percent, string expected)
    {
        AssessedLine[] lines = [Line(OilMaterial with { VanillinPercent = Numbers.Of(percent) }, 8m), Wax(92m)];
        Assert.Equal(expected, Text(Kinds("vanillin-wick", Of(new ContainerCandle(), lines))));
        Assert.Empty(Kinds("vanillin-wick", Of(new WaxMelt(), lines))); // no wick
    }

    [Theory]
    [InlineData("65", "Warn")]
    [InlineData("65.1", "Note")]
    [InlineData("85", "Note")]
    [InlineData("85.1", "")]
    [InlineData(null, "Note")]
    public void FlashAndPour_AtItsLimits(string? celsius, string expected)
    {
        AssessedMaterial oil = OilMaterial with { FlashPoint = celsius is null ? null : new Celsius(Numbers.Of(celsius)) };
        Assert.Equal(expected, Text(Kinds("flash-and-pour", Of(new WaxMelt(), Line(oil, 8m), Wax(92m)))));
        Assert.Empty(Kinds("flash-and-pour", Spray(Line(oil, 12m), Alcohol(88m))));
    }

    [Theory]
    [InlineData("60", "Note")]
    [InlineData("60.1", "")]
    public void FlammableHeat_ByAMeasuredFlashPoint(string celsius, string expected) => Assert.Equal(
        expected,
        Text(Kinds("flammable-heat", Spray(Oil(12m), Alcohol(88m)) with { Measured = new(FlashPoint: new Celsius(Numbers.Of(celsius))) })));

    [Fact]
    public void FlammableHeat_WithoutAnyEstimate_TakesTheMaterialsOwn()
    {
        AssessedMaterial light = OilMaterial with { FlashPoint = new Celsius(46m) };
        Assert.Equal([AdviceKind.Note], Kinds("flammable-heat", Of(new PreBlend(), Line(light, 100m))));
        Assert.Empty(Kinds("flammable-heat", Of(new PreBlend(), Oil(100m)))); // 95 °C
        Assert.Empty(Kinds("flammable-heat", Of(new WaxMelt(), Line(light, 8m), Wax(92m))));
    }

    [Fact]
    public void Plastics_LiquidsOnly()
    {
        Assert.Equal([AdviceKind.Note], Kinds("plastics", Spray(Alcohol(100m))));
        Assert.Contains("citrus terpenes", Given("plastics", Of(new PreBlend(), Line(Orange, 100m)))[0].ToString(), StringComparison.Ordinal);
        Assert.Empty(Kinds("plastics", Of(new RoomSprayWater(), Water(100m))));
        Assert.Empty(Kinds("plastics", Of(new ContainerCandle(), Oil(8m), Wax(92m))));
    }

    [Theory]
    [InlineData("0.99", "Note")]
    [InlineData("1", "Warn")]
    public void Linen_VanillinAtItsLimit(string percent, string expected) => Assert.Equal(
        expected, Text(Kinds("linen-stain", Of(new LinenSpray(), Line(OilMaterial with { VanillinPercent = Numbers.Of(percent) }, 2m), Alcohol(98m)))));

    [Fact]
    public void Linen_FixativeWarnsAndOtherKindsAreSilent()
    {
        AssessedLine[] lines = [Oil(2m), Line(Material("Benzyl benzoate", MaterialKind.Fixative, "120-51-4"), 1m), Alcohol(97m)];
        AdviceGiven given = Assert.Single(Given("linen-stain", Of(new LinenSpray(), lines)));
        Assert.Equal(AdviceKind.Warn, given.Kind);
        Assert.Equal("Benzyl benzoate", Assert.Single(given.Lines).Material.Name);
        Assert.Empty(Kinds("linen-stain", Spray(lines)));
    }

    [Theory]
    [InlineData("4.49", "Warn")] // of 90: 4.99 %
    [InlineData("4.5", "")]
    public void Sachet_FixativeOnDryWeight_AtItsLimit(string fixative, string expected)
    {
        decimal scent = 10m - Numbers.Of(fixative);
        AssessedLine root = Line(Material("Orris root", MaterialKind.Fixative), Numbers.Of(fixative));
        Assert.Equal(expected, Text(Kinds("sachet-fixative", Of(new Sachet(), Line(Lavender, scent), root, Petals(90m)))));
        Assert.Equal([AdviceKind.Note], Kinds("sachet-essential-oil", Of(new Sachet(), Line(Lavender, scent), root, Petals(90m))));
        Assert.Empty(Kinds("sachet-essential-oil", Of(new Sachet(), Oil(scent), root, Petals(90m))));
        Assert.Empty(Kinds("sachet-essential-oil", Spray(Line(Lavender, 10m), Alcohol(90m))));
    }
}
