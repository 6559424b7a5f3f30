using System.Globalization;
using Bunit;
using MakerStudio.Web.Shell.Drawings;

namespace MakerStudio.Web.Tests.Shell;

public sealed class DrawingTests : ShellContext
{
    [Theory]
    [InlineData(50, 50, 10)]
    [InlineData(22.3, 25, 5)]
    [InlineData(4000, 4000, 1000)]
    [InlineData(4120, 5000, 1000)]
    [InlineData(0.0487, 0.05, 0.01)]
    [InlineData(0, 1, 0.2)]
    public void RuleUpTo_AnyAmount_EndsAndStepsOnRoundNumbers(double atLeast, double end, double major)
    {
        var rule = Rule.UpTo((decimal)atLeast);

        Assert.Equal((decimal)end, rule.To);
        Assert.Equal((decimal)major, rule.Major);
        Assert.InRange(rule.Ticks().Count(t => t.Major), 4, 7);
    }

    [Fact]
    public void Rule_HundredTimesTooLong_StaysReadable()
    {
        var rule = new Rule(0, 100_000, 10, 10);

        Assert.InRange(rule.Ticks().Count(), 2, 121);
    }

    [Fact]
    public void RuleShare_OutsideTheRule_StandsOnItsEnd()
    {
        var rule = Rule.UpTo(50);

        Assert.Equal("100%", rule.Percent(80));
        Assert.Equal("0%", rule.Percent(-3));
        Assert.Equal("44.6%", rule.Percent(22.3m));
    }

    [Fact]
    public void GraduatedBar_Pieces_LieEndToEnd()
    {
        BarRow[] rows = [new([new("Fragrance", 12, Series.Fragrance), new("DPG", 5, Series.Fixative), new("Ethanol", 83, Series.Ethanol)])];

        var bar = Render<GraduatedBar>(p => p.Add(b => b.Rows, rows).Add(b => b.Scale, Rule.Exactly(100)).Add(b => b.Sentence, "Composition"));

        Assert.Equal(["0%", "12%", "17%"], bar.FindAll(".bar-row rect").Select(r => r.GetAttribute("x")!));
        Assert.Equal(["12%", "5%", "83%"], bar.FindAll(".bar-row rect").Select(r => r.GetAttribute("width")!));
        Assert.Equal("Composition", bar.Find("[role=img]").GetAttribute("aria-label"));
    }

    [Fact]
    public void ToleranceRule_ReadingInTolerance_SaysBothInWords()
    {
        var rule = Render<ToleranceRule>(p => p.Add(r => r.Target, 200m).Add(r => r.Tolerance, 1m).Add(r => r.Reading, 199.6m));

        Assert.Equal("Reading 199.6 against 199 to 201 grams", rule.Find("svg").GetAttribute("aria-label"));
        Assert.Equal(["198", "199", "200", "201", "202"], rule.FindAll("text").Select(t => t.TextContent));
        Assert.Single(rule.FindAll(".cup"));
    }

    [Theory]
    [InlineData(206)]
    [InlineData(3.32)]
    [InlineData(0)]
    [InlineData(1_000_000)]
    public void ToleranceRule_ReadingFarOff_KeepsItsTicksFewAndShowsTheReading(double reading)
    {
        var rule = Render<ToleranceRule>(p => p.Add(r => r.Target, 200m).Add(r => r.Tolerance, 1m).Add(r => r.Reading, (decimal)reading));

        Assert.InRange(rule.FindAll("line").Count, 5, 60);
        Assert.Equal(2, rule.FindAll("text").Count);
        Assert.Single(rule.FindAll(".cup"));
    }

    [Fact]
    public void Cylinder_MoreThanFull_GrowsTheRuleSoTheTopStaysInside()
    {
        var vessel = Render<Cylinder>(p => p.Add(c => c.Full, 4000m).Add(c => c.Layers, [new(Series.Fragrance, 494.4m), new(Series.Ethanol, 3625.6m)]));

        Assert.Equal("Running total 4,120.0 of 4,000.0 grams", vessel.Find("svg").GetAttribute("aria-label"));
        Assert.All(vessel.FindAll("rect"), r => Assert.True(double.Parse(r.GetAttribute("y")!, CultureInfo.InvariantCulture) >= 24));
    }

    [Fact]
    public void Cylinder_Paths_HoldNothingButCommandsAndNumbers()
    {
        var vessel = Render<Cylinder>(p => p.Add(c => c.Full, 4000m).Add(c => c.Layers, [new(Series.Fragrance, 480m), new(Series.Fixative, 199.6m)]));

        Assert.All(vessel.FindAll("path"), path => Assert.Matches(@"^[MVHQaZ0-9 .\-]+$", path.GetAttribute("d")!));
        Assert.Equal("679.6", vessel.Find(".tb").TextContent);
    }

    [Fact]
    public void CureLine_RestHalfDone_DrawsDoneAndToGo()
    {
        var start = new DateTimeOffset(2026, 10, 24, 18, 0, 0, TimeSpan.Zero);
        var span = new CureSpan(start, start.AddHours(100));

        var line = Render<CureLine>(p => p.Add(c => c.Span, span).Add(c => c.Now, start.AddHours(24)).Add(c => c.Sentence, "min Mon 26 Oct 19:00")
            .Add(c => c.Times, new CureTimes(start, start.AddHours(48))));

        Assert.Equal("48%", line.Find(".togo").GetAttribute("width"));
        Assert.Equal("24%", line.Find(".done").GetAttribute("width"));
        Assert.Equal("48%", line.Find(".min").GetAttribute("x1"));
    }

    [Theory]
    [InlineData(64.2, 67.4, 62, 70, 2)]
    [InlineData(0.82, 0.8648, 0.8, 0.9, 0.05)]
    [InlineData(60, 60, 58, 62, 2)]
    [InlineData(10, 90, 0, 100, 20)]
    [InlineData(0, 0, 0, 1, 0.2)]
    public void RuleAround_Values_HoldsThemOnRoundStepsAndBeginsAtZeroOnlyNearIt(double least, double most, double from, double to, double major)
    {
        var rule = Rule.Around((decimal)least, (decimal)most);

        Assert.Equal(((decimal)from, (decimal)to, (decimal)major), (rule.From, rule.To, rule.Major));
        Assert.InRange(rule.Ticks().Count(t => t.Major), 3, 8);
    }

    [Theory]
    [InlineData("2026-11-25", "2026-11-25", "16 Nov|23 Nov|30 Nov|7 Dec")]
    [InlineData("2026-10-15", "2026-11-25", "19 Oct|26 Oct|2 Nov|9 Nov|16 Nov|23 Nov")]
    [InlineData("2026-01-10", "2026-11-25", "Jan 2026|Mar 2026|May 2026|Jul 2026|Sep 2026|Nov 2026")]
    [InlineData("2021-03-01", "2026-11-25", "Jan 2021|Jan 2022|Jan 2023|Jan 2024|Jan 2025|Jan 2026|Jan 2027")]
    public void DayRule_AnySpan_LabelsAFewRoundDays(string first, string last, string labels)
    {
        var rule = DayRule.Around(DateOnly.Parse(first, CultureInfo.InvariantCulture), DateOnly.Parse(last, CultureInfo.InvariantCulture));

        Assert.Equal(labels, string.Join('|', rule.Ticks().Select(t => t.Label).OfType<string>()));
        Assert.All(rule.Ticks(), t => Assert.InRange(t.On, rule.From, rule.To));
    }

    private IRenderedComponent<DayChart> Chart(params DayPoint[] points) => Render<DayChart>(p => p
        .Add(c => c.Points, points).Add(c => c.Unit, "EUR/kg").Add(c => c.Sentence, "Fig oil rose 12 %.").Add(c => c.Until, new DateOnly(2026, 11, 25)));

    [Fact]
    public void DayChart_TwoSeriesAndAnEstimate_AreToldApartByShape()
    {
        DateOnly Day(int day) => new(2026, 10, day);

        var chart = Chart(new(Day(1), 60m, "Alder Supply"), new(Day(20), 64m, "Alder Supply"), new(Day(9), 68m, "Old Mill Scents"), new(Day(22), 65m, "Alder Supply", IsEstimate: true));

        var shapes = chart.FindAll(".over-days .pt").Select(p => p.GetAttribute("d")).ToList();
        Assert.Equal((4, shapes[0], true), (shapes.Count, shapes[1], shapes[0] != shapes[2]));
        Assert.Equal("2.6 2", chart.FindAll(".over-days .pt")[3].GetAttribute("stroke-dasharray"));
        Assert.Equal(["Alder Supply", "Old Mill Scents", "estimate", "The rule at the left does not begin at 0."], chart.FindAll(".key > span").Select(s => s.TextContent));
        // One line joins the two prices of Alder Supply; the estimate is joined to nothing.
        Assert.Equal("64", chart.Find(".tb").TextContent);
        Assert.Equal("Fig oil rose 12 %.", chart.Find("[role=img]").GetAttribute("aria-label"));
    }

    [Fact]
    public void DayChart_OnePoint_StandsInsideWithItsValue()
    {
        var chart = Chart(new DayPoint(new DateOnly(2026, 11, 25), 60m, "Alder Supply"));

        var point = chart.Find(".over-days svg svg");
        Assert.Equal(("50%", "119"), (point.GetAttribute("x"), point.GetAttribute("y")));
        Assert.Equal("60", chart.Find(".tb").TextContent);
    }

    [Fact]
    public void DayChart_NoPoint_DrawsARuleAndNothingOnIt() => Assert.Empty(Chart().FindAll(".pt"));

    [Fact]
    public void CoverChart_LeadTimeReached_IsHatchedAndSaid()
    {
        var chart = Render<CoverChart>(p => p.Add(c => c.Rows, [new("Sprayer", 6.9m, 10), new("Wick", 10.4m, 10), new("Fig oil", 264m, 14), new("Dye", 40m, null)]));

        Assert.Equal(["url(#h-warn)", "url(#h-warn)", "var(--ink-2)", "var(--ink-2)"], chart.FindAll(".bar-row > rect:not(.gap)").Select(r => r.GetAttribute("fill")!));
        Assert.Equal(["5.75%", "8.667%", "100%", "33.333%"], chart.FindAll(".bar-row > rect:not(.gap)").Select(r => r.GetAttribute("width")!));
        // What is missing to the lead time is outlined: 6.9 to 10 of 120 days, and nothing where 10.4 days are there.
        Assert.Equal(["2.583%", "0%"], chart.FindAll(".gap").Select(r => r.GetAttribute("width")!));
        Assert.Equal(["6 d of 10", "10 d of 10"], chart.FindAll(".late").Select(t => t.TextContent.Trim()));
        Assert.Equal((3, 1), (chart.FindAll(".limit").Count, chart.FindAll(".bar-row svg path").Count));
        Assert.Equal("Days of cover against lead time. Too short: Sprayer 6 days of cover, 10 days to get more, Wick 10 days of cover, 10 days to get more. 2 more last longer.", chart.Find("[role=img]").GetAttribute("aria-label"));
    }

    [Fact]
    public void CoverChart_LongLeadTime_IsOnTheRule()
    {
        var chart = Render<CoverChart>(p => p.Add(c => c.Rows, [new("Bottle", 100m, 160)]));

        Assert.Equal("80%", chart.Find(".limit").GetAttribute("x1"));
    }

    [Theory]
    [InlineData(10.4, true)]
    [InlineData(11.0, false)]
    public void CoverRule_WholeDays_WarnsAsTheListDoes(double days, bool warns)
    {
        var rule = Render<CoverRule>(p => p.Add(r => r.Days, (decimal)days).Add(r => r.LeadDays, 10));

        Assert.Equal(warns ? "url(#h-warn)" : "var(--ink-2)", rule.Find("rect").GetAttribute("fill"));
    }
}
