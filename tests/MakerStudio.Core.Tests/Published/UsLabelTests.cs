using MakerStudio.Core.Hazards;
using MakerStudio.Core.Hazards.Us;

namespace MakerStudio.Core.Tests.Published;

/// <summary>
/// US consumer labels: 16 CFR 1500.3(c)(6), 1500.121(c)(2), 500.21. The panel rule and the band of extremely flammable
/// were read; the other bands and type sizes are from memory; the worked panels are derived.
/// </summary>
public class UsLabelTests
{
    private const double MillimetresPerInch = 25.4;

    [Theory]
    [InlineData(-6.7, FhsaBand.ExtremelyFlammable)]
    [InlineData(-6.6, FhsaBand.Flammable)]
    [InlineData(17, FhsaBand.Flammable)]
    [InlineData(37.7, FhsaBand.Flammable)]
    [InlineData(37.8, FhsaBand.Combustible)]
    [InlineData(60, FhsaBand.Combustible)]
    [InlineData(65.6, FhsaBand.Combustible)]
    [InlineData(65.7, FhsaBand.None)]
    public void Band_ByFlashPoint(double flash, FhsaBand expected) => Assert.Equal(expected, FhsaLabel.BandOf((decimal)flash));

    [Fact]
    public void Band_NinetyNineByVolumeAboveTheLimit_FallsToTheNext()
    {
        Assert.Equal(FhsaBand.Combustible, FhsaLabel.BandOf(20m, band => band == FhsaBand.Flammable));
        Assert.Equal(FhsaBand.None, FhsaLabel.BandOf(20m, _ => true));
    }

    [Fact]
    public void Label_EthanolSpray_WarnsOfFireAndEyes()
    {
        FhsaLabel label = FhsaLabel.For([HazardCategory.FlamLiq2, HazardCategory.EyeIrrit2], new(17m, true));
        Assert.Equal("WARNING", label.Signal);
        Assert.Equal(["FLAMMABLE", "EYE IRRITANT"], label.Statements.Select(each => each.Text));
        Assert.False(label.ShowsPoison);
    }

    [Fact]
    public void Label_Diffuser_Cautions()
    {
        Assert.Equal("CAUTION", FhsaLabel.For([], new(60m, true)).Signal);
        Assert.Null(FhsaLabel.For([], null).Signal);
        Assert.NotEmpty(FhsaLabel.For([], null).Unknown);
    }

    [Fact]
    public void Panel_Cylinder_TwoByFourInches()
    {
        DisplayPanel panel = DisplayPanel.OfCylinder(2 * MillimetresPerInch, 4 * MillimetresPerInch);
        Assert.Equal(10.05, panel.SquareInches, 0.005);
        Assert.Equal(1.0 / 8, TypeSizes.NetQuantityInches(panel));
        Assert.Equal(new CautionTypeSize(7.0 / 64, 3.0 / 32, 1.0 / 16), TypeSizes.Caution(panel));
    }

    [Theory]
    [InlineData(2.5, 1.0 / 16)]
    [InlineData(2.6, 1.0 / 8)]
    public void Panel_Front_FiveSquareInchesIsTheEdge(double height, double expected) => Assert.Equal(
        expected,
        TypeSizes.NetQuantityInches(DisplayPanel.OfFront(2 * MillimetresPerInch, height * MillimetresPerInch)));

    [Theory]
    [InlineData(118.29, "4 FL OZ (118 mL)")]
    [InlineData(100, "3.38 FL OZ (100 mL)")]
    [InlineData(591.5, "1 PT 4 FL OZ (591 mL)")]
    [InlineData(946.36, "1 QT (946 mL)")]
    [InlineData(1500, "1 QT 1 PT 2.72 FL OZ (1.5 L)")]
    public void NetQuantity_Liquid(double millilitres, string expected) => Assert.Equal(expected, NetQuantity.OfLiquid((decimal)millilitres));

    [Theory]
    [InlineData(226.8, "NET WT 8 OZ (226 g)")]
    [InlineData(200, "NET WT 7.05 OZ (200 g)")]
    [InlineData(567, "NET WT 1 LB 4 OZ (567 g)")]
    [InlineData(453.6, "NET WT 1 LB (453 g)")]
    public void NetQuantity_Solid(double grams, string expected) => Assert.Equal(expected, NetQuantity.OfSolid((decimal)grams));
}
