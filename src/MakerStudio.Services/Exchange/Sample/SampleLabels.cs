using MakerStudio.Core.Hazards.Ufi;
using MakerStudio.Services.Labels;
using static MakerStudio.Services.Exchange.SampleNames;

namespace MakerStudio.Services.Exchange;

/// <summary>The label drawer of the sample studio, and Fig's label that Ana confirmed; the poison-centre code is invented.</summary>
internal sealed class SampleLabels(Story story)
{
    private const string Sheets = "60 × 80 mm, 9 on A4";
    private const string InventedKey = "20260918";
    private const uint Composition = 3;

    public IEnumerable<SampleAct> Acts()
    {
        yield return new SampleAct(story.Day(33, 11), async () =>
        {
            (await story.LabelStocks.AddAsync(story.Ana, new AddLabelStock { Name = Sheets, Width = 60m, Height = 80m, Columns = 3m, Rows = 3m, MarginLeft = 15m, MarginTop = 28.5m })).Expect();
            (await story.LabelStocks.AddAsync(story.Ana, new AddLabelStock { Name = "52 × 74 mm, roll", Width = 52m, Height = 74m, OnSheets = false })).Expect();
        });
    }

    /// <summary>After the studio has its own name, which stands on the label.</summary>
    public async Task ConfirmAsync()
    {
        var formula = story.FormulaIds[$"{Fig}, {SampleFormulaList.Spray}"];
        var size = story.SizeIds[$"{Fig}, {SampleFormulaList.Spray}, {SampleFormulaList.Bottle}"];
        var seen = await story.Labels.FindAsync(formula, 3, size) ?? throw new InvalidOperationException("The story has no Fig v3.");
        var code = UfiCode.TryEncode(UfiEntity.CompanyKey, InventedKey, Composition, out var made, out var why) ? made.Text : throw new InvalidOperationException(why);
        (await story.Labels.KeepAsync(story.Ana, new KeepLabel
        {
            FormulaVersionId = seen.Chosen!.Id, FormulaSizeId = size, StockId = seen.Stocks.Single(s => s.Name == Sheets).Id, Ufi = code,
            Confirms = true, Seen = seen.Mark, Version = seen.Version,
        })).Expect();
    }
}
