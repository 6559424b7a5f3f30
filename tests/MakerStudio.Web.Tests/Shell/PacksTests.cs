using MakerStudio.Web.Shell;

namespace MakerStudio.Web.Tests.Shell;

public sealed class PacksTests
{
    [Theory]
    [InlineData(46, "room-spray-alcohol", "100 mL bottle", "saleable", "46 saleable bottles of 100 mL")]
    [InlineData(46, "room-spray-alcohol", "100 mL", "saleable", "46 saleable bottles of 100 mL")]
    [InlineData(1, "room-spray-alcohol", "100 mL bottle", null, "1 bottle of 100 mL")]
    [InlineData(24, "container-candle", "180 g tin", null, "24 tins of 180 g")]
    [InlineData(24, "container-candle", null, null, "24 jars")]
    [InlineData(24, "wax-melt", "60 g box", null, "24 boxes of 60 g")]
    [InlineData(3, "sachet", "Wardrobe size", null, "3 bags, Wardrobe size")]
    public void Count_SizeAsTheStudioNamesIt_SaysContainerAndContentOnce(int count, string kind, string? size, string? before, string expected) =>
        Assert.Equal(expected, Packs.Count(count, kind, size, before));
}
