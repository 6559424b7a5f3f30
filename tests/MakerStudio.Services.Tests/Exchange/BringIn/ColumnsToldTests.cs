using MakerStudio.Services.Exchange;
using MakerStudio.Services.Tests.Exchange.FormulaFile;

namespace MakerStudio.Services.Tests.Exchange.BringIn;

public class ColumnsToldTests
{
    [Theory]
    [InlineData(BringInKind.Materials)]
    [InlineData(BringInKind.Lots)]
    [InlineData(BringInKind.Formulas)]
    public async Task Columns_OfEveryKind_StandInTheDocumentAsThePageTellsThem(BringInKind kind)
    {
        await using var studio = await TestStudio.NewAsync();
        var page = FormatFiles.Text("csv.md");

        foreach (var column in await studio.Get<BroughtFiles>().ColumnsAsync(kind))
        {
            Assert.Contains($"\n| {column.Heading}{(column.IsNeeded ? ", needed" : "")} | {column.Hint.Replace("|", "\\|", StringComparison.Ordinal)} |\n", page, StringComparison.Ordinal);
        }
    }
}
