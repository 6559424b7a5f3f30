using MakerStudio.Core.Exchange;
using MiniExcelLibs;
using MiniExcelLibs.OpenXml;

namespace MakerStudio.Services.Exchange;

/// <summary>
/// Writes a table as a workbook of one sheet. Text cells are texts there, so nothing in them is run; dates are dates,
/// and a moment is text in ISO 8601, since a workbook knows no offset.
/// </summary>
public static class XlsxSheet
{
    /// <summary>Letters a sheet's name may have; of the format.</summary>
    private const int LongestName = 31;

    private static readonly OpenXmlConfiguration AsIs = new() { AutoFilter = false, EnableAutoWidth = false, TableStyles = TableStyles.None };

    /// <summary>Row by row. The stream must allow seeking and stays open.</summary>
    public static async Task WriteAsync(Sheet sheet, string name, Stream to, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        // The library takes rows without waiting, so it works on a thread of its own.
        await Task.Run(() => to.SaveAs(Rows(sheet, cancel), printHeader: true, sheetName: name[..Math.Min(name.Length, LongestName)], configuration: AsIs), cancel);
    }

    /// <summary>An empty table still has its headings: the library reads them off the first row.</summary>
    private static IEnumerable<IDictionary<string, object?>> Rows(Sheet sheet, CancellationToken cancel)
    {
        var any = false;
        foreach (var row in sheet.Rows.ToBlockingEnumerable(cancel))
        {
            any = true;
            yield return Cells(sheet, i => row[i]);
        }

        if (!any)
        {
            yield return Cells(sheet, _ => null);
        }
    }

    private static Dictionary<string, object?> Cells(Sheet sheet, Func<int, object?> cell)
    {
        var cells = new Dictionary<string, object?>(sheet.Columns.Count);
        for (var i = 0; i < sheet.Columns.Count; i++)
        {
            cells[sheet.Columns[i].Heading] = cell(i) switch
            {
                DateOnly date => date.ToDateTime(TimeOnly.MinValue),
                DateTimeOffset moment => CsvCell.Moment(moment),
                var other => other,
            };
        }

        return cells;
    }
}
