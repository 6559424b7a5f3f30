using System.Text;
using MakerStudio.Core.Labels;
using MakerStudio.Core.Labels.Drawing;
using MakerStudio.Services.Labels;
using UglyToad.PdfPig;

namespace MakerStudio.Services.Tests.Labels;

public class LabelPdfTests
{
    private static readonly LabelStock Single = new(60m, 80m, null);
    private static readonly LabelStock Nine = new(60m, 80m, new(210m, 297m, 3, 3, 60m, 80m, 15m, 28.5m));

    public static TheoryData<string> Labels => ["spray", "diffuser", "candle", "us"];

    [Theory]
    [MemberData(nameof(Labels))]
    public void Pdf_ExtractedText_IsTheLabelsData(string which)
    {
        var layout = LabelPress.LayOut(FactsOf(which), StockOf(which));
        Assert.True(layout.Fits);
        var text = PrintedLabel.TextOf(Of(layout));
        Assert.Equal(PrintedLabel.Bare(string.Concat(layout.Drawing.Texts.Select(t => t.Text))), text);
        foreach (var said in layout.Content.Elements.SelectMany(element => element.Texts))
        {
            Assert.Contains(PrintedLabel.Bare((layout.HasCodes ? said : said.WithoutCodes()).ToString()), text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Labels))]
    public async Task Pdf_SquareCode_ReadsBackAsTheBatchsAddress(string which)
    {
        var facts = FactsOf(which);
        Assert.Equal(facts.Batch!.Address, await PrintedLabel.CodeOfAsync(Of(LabelPress.LayOut(facts, StockOf(which)))));
    }

    [Fact]
    public void Pdf_EveryFont_IsEmbedded()
    {
        var raw = Encoding.Latin1.GetString(Of(LabelPress.LayOut(LabelExamples.Spray, Single)));
        var described = raw.Split("/Type/FontDescriptor").Length - 1;
        Assert.Equal(3, described);
        Assert.Equal(described, raw.Split("/FontFile2").Length - 1);
    }

    [Fact]
    public void Pdf_LabelsOnSheets_StandWhereTheSheetSaysToATenthOfAMillimetre()
    {
        var layout = LabelPress.LayOut(LabelExamples.Spray, Nine);
        var name = layout.Drawing.Texts.Single(text => text.Role == DrawnRole.ScentName);
        var positions = Nine.Positions(12, firstPlace: 5, across: 0.3m, down: -0.5m);
        var pdf = LabelPdf.Of(layout.Drawing, Nine, positions, "sheets");
        using (var document = PdfDocument.Open(pdf))
        {
            Assert.Equal(2, document.NumberOfPages);
            Assert.Equal(210, document.GetPage(1).Width * PrintedLabel.MillimetresPerPoint, 1);
            Assert.Equal(297, document.GetPage(1).Height * PrintedLabel.MillimetresPerPoint, 1);
        }

        foreach (var page in positions.GroupBy(position => position.Page))
        {
            var firsts = PrintedLabel.LettersOf(pdf, page.Key).Where(letter => letter.Value == "F" && letter.FontName!.Contains("Petrona", StringComparison.Ordinal)).ToList();
            Assert.Equal(page.Count(), firsts.Count);
            foreach (var (position, letter) in page.Zip(firsts))
            {
                Assert.InRange(Math.Abs((letter.StartBaseLine.X * PrintedLabel.MillimetresPerPoint) - ((double)position.Left + name.Left)), 0, 0.1);
                Assert.InRange(Math.Abs(297 - (letter.StartBaseLine.Y * PrintedLabel.MillimetresPerPoint) - ((double)position.Top + name.Baseline)), 0, 0.1);
            }
        }
    }

    /// <summary>The size of a letter in the file is the one that was measured for the law.</summary>
    [Fact]
    public void Pdf_SmallestLetters_AreAsHighAsTheLayoutSays()
    {
        var layout = LabelPress.LayOut(LabelExamples.Spray, Single);
        var smallest = PrintedLabel.LettersOf(Of(layout), 1).Min(letter => letter.PointSize) * PrintedLabel.MillimetresPerPoint;
        Assert.Equal(layout.Letter, smallest, 2);
        Assert.True(smallest * Core.Labels.Type.LabelFace.Regular.XHeight >= 1.2 - 0.005);
    }

    [Fact]
    public void Pdf_Outlines_NumberEveryPlace() =>
        Assert.Equal("123456789", PrintedLabel.TextOf(LabelPdf.Outlines(Nine, 0m, 0m, "outlines")));

    private static byte[] Of(LabelLayout layout) => LabelPdf.Of(layout.Drawing, layout.Stock, layout.Stock.Positions(1), "label");

    private static LabelStock StockOf(string which) => which == "candle" ? new(70m, 70m, null) : Single;

    private static LabelFacts FactsOf(string which) => which switch
    {
        "spray" => LabelExamples.Spray,
        "diffuser" => LabelExamples.Diffuser,
        "candle" => LabelExamples.Candle,
        _ => LabelExamples.UsSpray,
    };
}
