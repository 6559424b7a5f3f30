using Bunit;
using MakerStudio.Core.Prices;
using MakerStudio.Services.Inventory;
using MakerStudio.Web.Finished;
using MakerStudio.Web.Prices;
using MakerStudio.Web.Shell.Drawings;
using MakerStudio.Web.Tests.Shell;

namespace MakerStudio.Web.Tests.Prices;

/// <summary>What the drawings of prices and yields say and where they draw it; own worked examples W3 to W6.</summary>
public class ChartTests : ShellContext
{
    private static readonly ChannelRow Web = new(Guid.CreateVersion7(), 6m, new Channel(
        "Web shop", new SalesTax(0.20m, TaxBasis.InTag), [new("Payment", 0.029m, 0.30m, FeeBasis.Paid), new("Marketplace", 0.065m, 0m, FeeBasis.Paid)], 0.55m), 1);

    private static readonly ChannelRow Shop = new(Guid.CreateVersion7(), 5m, Channel.Wholesale("Wholesale", new SalesTax(0.20m, TaxBasis.InTag)), 1);

    [Fact]
    public void Anatomy_OfTheWorkedTag_AddsUpToIt_AndMarksTheLowestWebTag()
    {
        var of = PriceAnatomy.Of(22m, 4.51m, Web, 0.75m, new TagRounding());

        Assert.Equal(22m, Math.Round(of.Pieces.Sum(p => p.Value), 10));
        Assert.Equal(["cost", "fees and sale", "left for you", "tax"], of.Pieces.Select(p => p.Label));
        Assert.Contains(of.Marks, m => m.Words == "15.37 lowest safe tag");
        Assert.Contains(of.Marks, m => m.Words == "21.65 tag at your floor, 75.0 %" && m.IsLimit);
        Assert.Equal(["9.02 keystone, to shops", "18.04 keystone, to people, net"], of.Guides.Select(m => m.Words));
        Assert.Equal(25m, of.Scale.To);
    }

    [Fact]
    public void Anatomy_WhereAShopTakesItsPart_ShowsItAndWatchesNoFloor()
    {
        var of = PriceAnatomy.Of(22m, 4.51m, Shop, 0.75m, new TagRounding());

        Assert.Equal(["cost", "left for you", "the shop’s part", "tax"], of.Pieces.Select(p => p.Label));
        Assert.Contains(of.Marks, m => m.Words == "9.17 ours");
        Assert.DoesNotContain(of.Marks, m => m.IsLimit);
    }

    [Fact]
    public void Anatomy_TagUnderCost_DrawsWhatItCostsAndSaysItLosesMoney()
    {
        var rule = Render<PriceRule>(p => p.Add(r => r.Of, PriceAnatomy.Of(4m, 4.51m, Web, null, new TagRounding())).Add(r => r.Currency, "EUR"));

        Assert.Contains("short of its cost", rule.Find("[role=img]").GetAttribute("aria-label"), StringComparison.Ordinal);
        Assert.Equal(["cost 4.51", "fees and sale 1.23", "EUR"], rule.FindAll("figcaption span").Select(s => s.TextContent.Trim()));
    }

    [Fact]
    public void Marks_CloseTogether_StandInLanesOfTheirOwn()
    {
        PriceMark[] marks = [new(17.37m, "tag at your floor, 70.0 %"), new(18.33m, "net"), new(17.5m, "lowest safe tag"), new(22m, "tag", true), new(4.5m, "cost", true)];

        var placed = PriceAnatomy.Place(marks, Rule.UpTo(22m));

        Assert.Equal(5, placed.Count);
        Assert.Equal(3, placed.Where(p => p.Mark.At is > 17m and < 18.5m).Select(p => p.Lane).Distinct().Count());
        Assert.Equal(0, placed.Single(p => p.Mark.Says == "cost").Lane);
        Assert.True(placed.Single(p => p.Mark.Says == "tag").IsLeft);
    }

    [Fact]
    public void WhatIfLine_OfTheWorkedBatch_MeetsItsFloorBetweenNowAndThen()
    {
        var line = WhatIfLine.Of(WhatIfPartTests.View(), new Supposed { MaterialId = WhatIfPartTests.Oil, PriceByPercent = 18m })!;

        Assert.Equal((75.4m, 74.7m, 75m), (Math.Round(line.Now, 1), Math.Round(line.Then, 1), line.Floor));
        // (4.5833 − 4.5079) ÷ 0.7207 of fragrance in a bottle.
        Assert.Equal(10.5m, Math.Round(line.Crosses!.Value, 1));
        Assert.Contains("it meets your floor of 75.0 % at +10.5 %", line.Says, StringComparison.Ordinal);
        Assert.Single(Render<WhatIfChart>(p => p.Add(c => c.Line, line)).FindAll(".cup"));
    }

    [Fact]
    public void WhatIfLine_PriceOfWhatNoProductHolds_IsNotDrawn() =>
        Assert.Null(WhatIfLine.Of(WhatIfPartTests.View(), new Supposed { MaterialId = Guid.CreateVersion7(), PriceByPercent = 18m }));

    [Fact]
    public void Margins_TwoChannelsThatStandAlike_AreOneLineAndTheChangeIsSaid()
    {
        var history = new MarginHistory(
            [Row("Web shop", Web.Id, 5, 0.754m), Row("Web shop", Web.Id, 25, 0.747m), Row("Market stall", Shop.Id, 5, 0.754m), Row("Market stall", Shop.Id, 25, 0.747m)],
            [new(new DateOnly(2026, 11, 12), "Market stall", 4, 70m, 18.04m)]);

        Assert.Equal(["Web shop, Market stall", MarginWords.AsSold], MarginWords.Points(history).Select(p => p.Series).Distinct());
        Assert.Equal(
            "Web shop, Market stall: 74.7 %, 0.7 points down since 5 Nov 2026, under its floor of 75.0 %. As sold: 74.2 % over 4 units since 12 Nov 2026.", MarginWords.Says(history, 0.75m));
    }

    [Fact]
    public void MarginPart_NothingYet_SaysWhatWillStandThere() => Assert.Contains(
        "From its first filling", Render<MarginPart>(p => p.Add(m => m.History, new MarginHistory([], [])).Add(m => m.Today, new DateOnly(2026, 11, 25))).Markup, StringComparison.Ordinal);

    [Fact]
    public void MarginPart_OnePointBelowZero_IsDrawnWithTheZeroLine()
    {
        var part = Render<MarginPart>(p => p.Add(m => m.History, new MarginHistory([Row("Web shop", Web.Id, 25, -0.2m)], [])).Add(m => m.Today, new DateOnly(2026, 11, 25)).Add(m => m.Floor, 0.7m));

        Assert.Single(part.FindAll(".pt"), e => e.ParentElement!.ParentElement!.ClassList.Contains("d") && e.ParentElement.HasAttribute("x"));
        Assert.Equal(3, part.FindAll("line.ink").Count); // the foot, zero, the floor
        Assert.Contains("−20.0 %", part.Find("tbody").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void DayChart_Stairs_StayUntilTheNextPoint()
    {
        DayPoint[] points = [new(new(2026, 11, 1), 70m, "Web shop"), new(new(2026, 11, 11), 75m, "Web shop"), new(new(2026, 11, 6), 60m, "as sold", IsAlone: true)];

        var chart = Render<DayChart>(p => p.Add(c => c.Points, points).Add(c => c.Sentence, "Margin").Add(c => c.Unit, "%").Add(c => c.Until, new DateOnly(2026, 11, 11)).Add(c => c.IsStair, true).Add(c => c.NameEach, true));

        var runs = chart.FindAll("line.run").Select(l => (l.GetAttribute("x1") == l.GetAttribute("x2"), l.GetAttribute("y1") == l.GetAttribute("y2"))).ToList();
        Assert.Equal([(false, true), (true, false)], runs);
        Assert.Equal("75 Web shop", Assert.Single(chart.FindAll(".names text")).TextContent);
    }

    [Theory]
    [InlineData(-20, 76, -20, 80)]
    [InlineData(-3, -1, -3, 0)]
    [InlineData(-0.2, 0, -0.2, 0)]
    public void RuleAround_BelowZero_GoesThroughZero(double least, double most, double from, double to)
    {
        var rule = Rule.Around((decimal)least, (decimal)most);

        Assert.Equal(((decimal)from, (decimal)to), (rule.From, rule.To));
        Assert.InRange(rule.Ticks().Count(t => t.Major), 2, 8);
    }

    [Fact]
    public void Yields_SayTheChangeAndTheAccident()
    {
        var yields = new FormulaYields(Guid.CreateVersion7(), "Fig", "room-spray-alcohol", [Yield("RS-1", 1, 3_936, 4, 0), Yield("RS-2", 12, 3_772, 8, 200)]);

        Assert.Equal("96.4 % over 2 batches; RS-2 yielded 94.3 %, 4.1 points less than RS-1 before it. Lost by accident and expensed: RS-2 200 g.", YieldWords.Says(yields));
        Assert.Equal(["left over", "filter, vessel, hose", "accident"], YieldWords.Losses(yields)[1].Pieces.Select(p => p.Label));
        Assert.Equal([0.1m, 1.5m], YieldWords.Losses(yields)[0].Pieces.Select(p => p.Value));
        Assert.Equal("No batch of it is finished yet.", YieldWords.Says(yields with { Rows = [] }));
    }

    /// <summary>W6: sizes of 30, 100 and 250 mL typed as they are priced; 8.64, 14.84 and 26.04 at a margin of 65 %, and tags rounded up from them.</summary>
    [Fact]
    public void Sizes_TypedAsTheWorkedLadder_ComeToItsTags()
    {
        var typed = new SizesTyping { LiquidPerMillilitre = 0.0132577m, OverfillPercent = 0.6m, LabourPerMinute = 0.30m, Overhead = 0.35m };
        typed.Sizes.AddRange([new() { Millilitres = 30, Packaging = 1.29m, Minutes = 1.6m }, new() { Millilitres = 100, Packaging = 1.8348m, Minutes = 2.7m }, new() { Millilitres = 250, Packaging = 2.71m, Minutes = 4.0m }, new()]);

        var rungs = typed.Rungs();
        var chart = Render<LadderChart>(p => p.Add(c => c.View, WhatIfPartTests.View()).Add(c => c.Sizes, rungs).Add(c => c.Target, new PriceTarget.Margin(0.65m)));

        Assert.Equal([2.5201m, 4.3285m, 7.5943m], rungs.Select(r => Math.Round(r.UnitCost, 4)));
        Assert.Equal(["8.65", "14.85", "26.04"], chart.FindAll("tbody b").Select(b => b.TextContent));
        Assert.Equal(["of 8.6404, 7.20 net", "of 14.8407, 12.37 net", "of 26.0376, 21.70 net"], chart.FindAll("tbody small").Select(b => b.TextContent));
    }

    /// <summary>W3: cost 4.51 and a markup of 150 % are 11.28 net; keystone is four times the cost.</summary>
    [Fact]
    public async Task Ladder_AnotherTargetIsTyped_FollowsIt()
    {
        var view = WhatIfPartTests.View();
        var part = Render<LadderPart>(p => p.Add(l => l.View, view).Add(l => l.Product, view.Products[0]).Add(l => l.UnitCost, 4.51m));
        Assert.Contains("12.89 net", part.Find("tbody").TextContent, StringComparison.Ordinal);

        await part.Find("select").ChangeAsync(new() { Value = "markup" });
        await part.Find("input").ChangeAsync(new() { Value = "150" });
        Assert.Contains("of 13.5300, 11.28 net", part.Find("tbody").TextContent, StringComparison.Ordinal);

        await part.Find("select").ChangeAsync(new() { Value = "keystone" });
        Assert.Contains("18.04 net", part.Find("tbody").TextContent, StringComparison.Ordinal);
        Assert.Equal("keystone", part.Find("select").GetAttribute("value"));
    }

    private static MarginRow Row(string channel, Guid id, int day, decimal margin) => new(id, channel, true, new DateOnly(2026, 11, day), 22m, 4.51m, "RS-1", margin, 10m);

    private static YieldRow Yield(string code, int day, long kept, long left, long lost) =>
        new(code, new DateTimeOffset(2026, 11, day, 12, 0, 0, TimeSpan.Zero), 3, "100 mL bottle", 4_000_000, kept * 1000, left * 1000, lost * 1000, 1.5m);
}
