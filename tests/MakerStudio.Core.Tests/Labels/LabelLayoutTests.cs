using MakerStudio.Core.Assessing;
using MakerStudio.Core.Labels;
using MakerStudio.Core.Labels.Drawing;

namespace MakerStudio.Core.Tests.Labels;

public class LabelLayoutTests
{
    private static readonly CodeModules Code = new([.. Enumerable.Range(0, 29).Select(row => (IReadOnlyList<bool>)[.. Enumerable.Range(0, 29).Select(column => (row * column) % 3 == 0)])]);

    public static TheoryData<string, int, int> Labels => new()
    {
        { "spray", 60, 80 }, { "spray", 90, 120 }, { "diffuser", 60, 80 }, { "candle", 70, 70 }, { "us", 60, 80 }, { "us candle", 60, 50 }, { "bare", 50, 30 }, { "small", 52, 60 },
    };

    [Theory]
    [MemberData(nameof(Labels))]
    public void Layout_ThatFits_KeepsEverythingInsideApartAndLegible(string which, int width, int height)
    {
        LabelLayout layout = LabelLayout.Of(LabelContent.Of(FactsOf(which)), new LabelStock(width, height, null), Code);
        Assert.True(layout.Fits, string.Join(' ', layout.Problems));
        Assert.Equal(height, layout.Drawing.Height, 6);
        List<Box> boxes =
        [
            .. layout.Drawing.Texts.Select(text => new Box(text.Left, text.Baseline - (text.Size * text.Face.CapitalHeight), text.Width, text.Size * text.Face.CapitalHeight)),
            .. layout.Drawing.Pictures.Where(each => each.Role == DrawnRole.Pictogram).Select(each => each.Box),
            .. layout.Drawing.Code is { } code ? [code.Box] : Array.Empty<Box>(),
        ];
        Assert.All(boxes, box => Assert.True(box.Left >= 1.49 && box.Top >= 1.49 && box.Right <= width - 1.49 && box.Bottom <= height - 1.49, $"{box}"));
        Assert.DoesNotContain(
            from i in Enumerable.Range(0, boxes.Count) from j in Enumerable.Range(0, i) select (One: boxes[i], Other: boxes[j]),
            pair => Overlap(pair.One, pair.Other));
        Assert.DoesNotContain(LabelLegibility.Check(layout), check => check.Verdict == Legible.No);
    }

    [Theory]
    [MemberData(nameof(Labels))]
    public void Layout_EveryWordOfTheContent_IsSetOnce(string which, int width, int height)
    {
        LabelLayout layout = LabelLayout.Of(LabelContent.Of(FactsOf(which)), new LabelStock(width, height, null), Code);
        IEnumerable<LabelText> said = layout.Content.Elements.SelectMany(element => element.Texts).Select(text => layout.HasCodes ? text : text.WithoutCodes());
        Assert.Equal(
            Letters(said.Select(text => text.ToString())).Where(letter => letter != ','),
            Letters(layout.Drawing.Texts.Select(text => text.Text)).Where(letter => letter != ','));
    }

    [Fact]
    public void Layout_TooMuchForTheLabel_ShrinksNothingBelowItsMinimumAndSaysWhatToDo()
    {
        LabelLayout layout = LabelLayout.Of(LabelContent.Of(LabelExamples.Spray with { Net = new(30m, true) }), new LabelStock(40m, 30m, null), Code);
        Assert.False(layout.Fits);
        Assert.Contains("need", Assert.Single(layout.Problems), StringComparison.Ordinal);
        Assert.Contains(layout.WaysOut, way => way.Contains("H225", StringComparison.Ordinal));
        Assert.Contains(layout.WaysOut, way => way.Contains("fold-out", StringComparison.Ordinal));
        Assert.True(layout.Drawing.Height > 60);
        Assert.DoesNotContain(LabelLegibility.Check(layout), check => check.Verdict == Legible.No);
    }

    [Fact]
    public void Layout_ALetterTheFontsLack_IsAProblem() => Assert.Contains(
        "“漢”",
        Assert.Single(LabelLayout.Of(LabelContent.Of(LabelExamples.Spray with { ScentName = "Fig 漢" }), new LabelStock(90m, 120m, null), null).Problems),
        StringComparison.Ordinal);

    [Fact]
    public void Layout_LongNameAndLongWord_StayInside()
    {
        LabelFacts facts = LabelExamples.Spray with
        {
            ScentName = "Orange blossom, cedar and cold smoke of a winter morning",
            Wording = LabelWording.Usual with { ExtraLines = ["https://studio.example/a/very/long/address/without/any/space/in/it/at/all/that/goes/on"] },
        };
        LabelLayout layout = LabelLayout.Of(LabelContent.Of(facts), new LabelStock(70m, 120m, null), Code);
        Assert.True(layout.Fits, string.Join(' ', layout.Problems));
        Assert.All(layout.Drawing.Texts, text => Assert.True(text.Left + text.Width <= 70 - 2.7, text.Text));
    }

    [Fact]
    public void Layout_MoreRoom_NeverGivesSmallerLettersOrPictograms()
    {
        LabelContent content = LabelContent.Of(LabelExamples.Spray);
        List<LabelLayout> growing = [.. Enumerable.Range(80, 30).Select(height => LabelLayout.Of(content, new LabelStock(60m, height, null), Code))];
        Assert.All(growing.Zip(growing.Skip(1)), pair => Assert.True(pair.Second.PictogramSide >= pair.First.PictogramSide));
        Assert.Equal(16, growing[^1].PictogramSide, 3);
    }

    /// <summary>
    /// us_labelling_and_alcohol of the reference (16 CFR 500.21, 1500.121(c)(2); type sizes from memory): a cylinder 2 in
    /// across and 4 in high has a panel of 10.05 sq in; net quantity 1/8 in, signal word 7/64, hazard 3/32, other 1/16.
    /// </summary>
    [Fact]
    public void Minimums_OfThePublishedCylinder_AreThoseOfTheTables()
    {
        const double inch = 25.4;
        LabelFacts facts = LabelExamples.UsSpray with { Wording = LabelWording.Usual with { PanelSquareMillimetres = 10.05 * inch * inch } };
        LabelMinimums minimums = LabelMinimums.For(facts, new LabelStock(60m, 80m, null));
        Assert.Equal(inch / 8, minimums.Net, 6);
        Assert.Equal(inch * 7 / 64, minimums.Signal, 6);
        Assert.Equal(inch * 3 / 32, minimums.Hazard, 6);
        Assert.Equal(inch / 16, minimums.LetterHeight, 6);
    }

    /// <summary>Directive 76/211/EEC, Annex I 3.1 (from memory), and CLP Annex I 1.2.1: 52 × 74 mm / 15 is a side of 16 mm.</summary>
    [Theory]
    [InlineData(50, 2)]
    [InlineData(50.1, 3)]
    [InlineData(200, 3)]
    [InlineData(201, 4)]
    [InlineData(1000, 4)]
    [InlineData(1001, 6)]
    public void Minimums_FiguresOfTheNetQuantity_FollowTheContent(double amount, double height)
    {
        LabelMinimums minimums = LabelMinimums.For(LabelExamples.Spray with { Net = new((decimal)amount, true) }, new LabelStock(60m, 80m, null));
        Assert.Equal(height, minimums.Net);
        Assert.Equal((10, 16), (minimums.PictogramSide, minimums.PictogramWanted));
        Assert.Equal(amount <= 500 ? 1.2 : 1.4, minimums.LetterHeight, 6);
    }

    private static LabelFacts FactsOf(string which) => which switch
    {
        "spray" => LabelExamples.Spray,
        "small" => LabelExamples.SmallSpray,
        "diffuser" => LabelExamples.Diffuser,
        "candle" => LabelExamples.Candle,
        "us" => LabelExamples.UsSpray,
        "us candle" => LabelExamples.Candle with { Scheme = LabelScheme.UnitedStates, Hazards = LabelHazards.None, Ufi = null },
        _ => LabelExamples.Bare with { Maker = LabelExamples.Spray.Maker },
    };

    private static bool Overlap(Box one, Box other)
    {
        const double hair = 0.01;
        return one.Left < other.Right - hair && other.Left < one.Right - hair && one.Top < other.Bottom - hair && other.Top < one.Bottom - hair;
    }

    private static IOrderedEnumerable<char> Letters(IEnumerable<string> texts) => string.Concat(texts).Where(letter => !char.IsWhiteSpace(letter)).Order();
}
