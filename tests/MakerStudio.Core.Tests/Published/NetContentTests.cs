using MakerStudio.Core.Filling;
using MakerStudio.Core.Workings;

namespace MakerStudio.Core.Tests.Published;

/// <summary>Directive 76/211/EEC, Annex I 2.4 (V up to 1,000; the last band and the rounding M).</summary>
public class NetContentTests
{
    [Fact]
    public void TolerableError_EveryExample() => Assert.All(PublishedTable.Rows("net_contents_eu_examples.csv", 14), row =>
    {
        decimal error = EuTolerableError.Of(Numbers.Of(row["nominal_g_or_mL"]))!.Value;
        Assert.Equal(Numbers.Of(row["tne_g_or_mL_rounded_up_to_0.1"]), error);
        Assert.Equal(Numbers.Of(row["twice_tne"]), 2 * error);
    });

    [Fact]
    public void TolerableError_EveryBand_MeetsAtItsEnds() => Assert.All(PublishedTable.Rows("net_contents_eu_tne.csv", 7), row =>
    {
        foreach (decimal end in (decimal[])[Numbers.Of(row["nominal_from_g_or_mL"]), Numbers.Of(row["nominal_to_g_or_mL"])])
        {
            decimal expected = row.Has("tne_pct") ? decimal.Ceiling(end * Numbers.Of(row["tne_pct"]) / 10) / 10 : Numbers.Of(row["tne_g_or_mL"]);
            Assert.Equal(expected, EuTolerableError.Of(end)!.Value);
        }
    });

    /// <summary>Just above each end the next band counts; per cents rounded up to 0.1.</summary>
    [Theory]
    [InlineData("50.1", "4.5")]
    [InlineData("100.1", "4.6")]
    [InlineData("200.1", "9")]
    [InlineData("300.1", "9.1")]
    [InlineData("500.1", "15")]
    [InlineData("1000.1", "15.1")]
    public void TolerableError_JustAboveAnEnd_IsThatOfTheNextBand(string nominal, string expected) =>
        Assert.Equal(Numbers.Of(expected), EuTolerableError.Of(Numbers.Of(nominal))!.Value);

    [Fact]
    public void TolerableError_OutsideTheTable_IsNone()
    {
        Assert.Null(EuTolerableError.Of(4.99m));
        Assert.Null(EuTolerableError.Of(10_000.01m));
        Assert.Equal(DataStatus.Memory, EuTolerableError.Of(2000)!.Source.Status);
        Assert.Equal(DataStatus.Memory, EuTolerableError.Of(1000.1m)!.Source.Status);
        Assert.Equal(DataStatus.Read, EuTolerableError.Of(1000)!.Source.Status);
        Assert.NotNull(EuTolerableError.Of(5));
        Assert.NotNull(EuTolerableError.Of(10_000));
    }
}
