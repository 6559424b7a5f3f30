using System.Text.RegularExpressions;
using MakerStudio.Core.Blending;
using MakerStudio.Core.Products;
using MakerStudio.Core.Quantities;

namespace MakerStudio.Core.Tests.Products;

public class ProductKindsTests
{
    public static TheoryData<string> Keys => new(ProductKinds.All.Select(kind => kind.Key));

    [Fact]
    public void All_EveryKindInTheAssembly_IsListedOnce()
    {
        IEnumerable<string> written = typeof(ProductKind).Assembly.GetExportedTypes()
            .Where(type => type.IsSubclassOf(typeof(ProductKind)) && !type.IsAbstract)
            .Select(type => type.Name);
        Assert.Equal(written.Order(), ProductKinds.All.Select(kind => kind.GetType().Name).Order());
        Assert.NotEmpty(ProductKinds.All);
    }

    [Fact]
    public void All_KeysAndNames_AreUniqueAndStable()
    {
        Assert.Equal(
            [
                "room-spray-alcohol", "room-spray-water", "linen-spray", "reed-diffuser", "container-candle", "wax-melt",
                "sachet", "pre-blend",
            ],
            ProductKinds.All.Select(kind => kind.Key));
        Assert.Equal(ProductKinds.All.Count, ProductKinds.All.Select(kind => kind.Name).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Defaults_LieWithinSaneRanges(string key)
    {
        ProductKind kind = ProductKinds.Get(key);
        Assert.Matches(new Regex("^[a-z]+(-[a-z]+)*$"), kind.Key);
        Assert.Matches(new Regex("^[A-HJ-NP-Z]{1,2}$"), kind.CodePrefix);
        Assert.InRange(kind.CureMin, TimeSpan.FromHours(12), TimeSpan.FromDays(60));
        Assert.InRange(kind.CureIdeal, kind.CureMin, TimeSpan.FromDays(90));
        Assert.InRange(kind.FillToleranceFraction, 0.01m, 0.10m);
        Assert.InRange(kind.ExpectedLossFraction, 0.001m, 0.05m);
        Assert.Contains(kind.ClockStartsAt, new[] { "last addition", "pour" });
        Assert.Contains(kind.NominalUnit, new[] { AmountUnit.Millilitre, AmountUnit.Gram });
        Assert.Equal(kind.DefaultBasis == LineBasis.PercentOfWax, kind.UsualLoad?.Of == "wax");
        Assert.Equal(kind.IsSold, kind.UsualLoad is not null);
        Assert.Equal(kind.IsSold, kind.UsualSizes.Count > 0);
        Assert.All(kind.UsualSizes, size => Assert.InRange(size, 5m, 1000m));
        Assert.NotEmpty(kind.FillWord);
        Assert.NotEmpty(kind.ContainerWord);
        if (kind.UsualLoad is { } load)
        {
            Assert.InRange(load.Lowest, 0.005m, load.Highest);
            Assert.InRange(load.Highest, load.Lowest, 0.60m);
            Assert.True(load.Holds(load.Lowest) && load.Holds(load.Highest) && !load.Holds(load.Highest + 0.01m));
        }
    }

    [Fact]
    public void Get_UnknownKey_IsABugAndFindIsNot()
    {
        Assert.Throws<KeyNotFoundException>(() => ProductKinds.Get("bath-bomb"));
        Assert.Null(ProductKinds.Find("bath-bomb"));
    }

    [Fact]
    public void CureClock_PouredKinds_StartAtThePour() => Assert.Equal(
        ["container-candle", "wax-melt"],
        ProductKinds.All.Where(kind => kind.ClockStartsAt == "pour").Select(kind => kind.Key));
}
