using CsCheck;
using MakerStudio.Core.Labels;

namespace MakerStudio.Core.Tests.Labels;

public class LabelStockTests
{
    private static readonly LabelStock Nine = new(60m, 80m, new(210m, 297m, 3, 3, 60m, 80m, 15m, 28.5m));

    [Fact]
    public void Positions_NineOnASheet_StandRowByRow()
    {
        IReadOnlyList<LabelPosition> positions = Nine.Positions(10);
        Assert.Equal(new LabelPosition(1, 1, 15m, 28.5m), positions[0]);
        Assert.Equal(new LabelPosition(1, 3, 135m, 28.5m), positions[2]);
        Assert.Equal(new LabelPosition(1, 4, 15m, 108.5m), positions[3]);
        Assert.Equal(new LabelPosition(1, 9, 135m, 188.5m), positions[8]);
        Assert.Equal(new LabelPosition(2, 1, 15m, 28.5m), positions[9]);
        Assert.Equal(6, Nine.Pages(46));
        Assert.Equal(7, Nine.Pages(47, firstPlace: 9));
    }

    [Fact]
    public void Positions_FromPlaceFiveWithAnOffset_AreShifted() =>
        Assert.Equal(new LabelPosition(1, 5, 75.3m, 108.0m), Nine.Positions(1, 5, 0.3m, -0.5m)[0]);

    [Fact]
    public void Positions_APlaceThePageDoesNotHave_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => Nine.Positions(1, 10));

    [Fact]
    public void Positions_WithoutASheet_AreAPageEach() =>
        Assert.Equal([1, 2, 3], new LabelStock(60m, 80m, null).Positions(3).Select(position => position.Page));

    [Theory]
    [InlineData(59, 80, 15, "overlap across")]
    [InlineData(60, 79.9, 15, "overlap down")]
    [InlineData(60, 80, 31, "last column ends at 211")]
    [InlineData(60, 105, 15, "last row ends at 318.5")]
    public void Problems_OfASheetThatDoesNotWork_AreSaid(double across, double down, double left, string expected) => Assert.Contains(
        expected,
        Assert.Single((Nine with { Sheet = Nine.Sheet! with { PitchAcross = (decimal)across, PitchDown = (decimal)down, MarginLeft = (decimal)left } }).Problems()),
        StringComparison.Ordinal);

    [Fact]
    public void Problems_OfAGoodSheet_AreNone() => Assert.Empty(Nine.Problems());

    /// <summary>Whatever sheet has no problems: every label lies on the page, no two overlap, and all are there once.</summary>
    [Fact]
    public void Positions_OfAnyGoodSheet_LieOnThePageAndApart() => Gen
        .Select(Gen.Int[10, 90], Gen.Int[10, 90], Gen.Int[1, 6], Gen.Int[1, 8], Gen.Int[0, 12], Gen.Int[0, 30], Gen.Int[1, 120])
        .Where((width, height, columns, rows, gap, margin, _) => StockOf(width, height, columns, rows, gap, margin).Problems().Count == 0)
        .Sample((width, height, columns, rows, gap, margin, count) =>
        {
            LabelStock stock = StockOf(width, height, columns, rows, gap, margin);
            int first = (count % stock.PlacesAPage) + 1;
            IReadOnlyList<LabelPosition> positions = stock.Positions(count, first);
            Assert.Equal(count, positions.Select(each => (each.Page, each.Place)).Distinct().Count());
            Assert.Equal(stock.Pages(count, first), positions.Max(each => each.Page));
            Assert.All(positions, each => Assert.True(each.Left >= 0 && each.Top >= 0 && each.Left + stock.Width <= 210m && each.Top + stock.Height <= 297m));
            foreach (IGrouping<int, LabelPosition> page in positions.GroupBy(each => each.Page))
            {
                Assert.DoesNotContain(
                    from one in page from other in page where one.Place < other.Place select (one, other),
                    pair => Math.Abs(pair.one.Left - pair.other.Left) < stock.Width && Math.Abs(pair.one.Top - pair.other.Top) < stock.Height);
            }
        });

    private static LabelStock StockOf(int width, int height, int columns, int rows, int gap, int margin) =>
        new(width, height, new(210m, 297m, columns, rows, width + gap, height + gap, margin, margin));
}
