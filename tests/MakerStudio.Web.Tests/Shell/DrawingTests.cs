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
        Assert.All(vessel.FindAll("rect"), r => Assert.True(double.Parse(r.GetAttribute("y")!, System.Globalization.CultureInfo.InvariantCulture) >= 24));
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
}
