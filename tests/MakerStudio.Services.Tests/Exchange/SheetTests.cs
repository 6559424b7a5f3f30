using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml.Linq;
using MakerStudio.Core.Exchange;
using MakerStudio.Services.Exchange;

namespace MakerStudio.Services.Tests.Exchange;

/// <summary>What a spreadsheet, or a program, finds in a table that was saved.</summary>
public sealed class SheetTests : IDisposable
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");
    private static readonly XNamespace Book = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private readonly CultureInfo _before = CultureInfo.CurrentCulture;

    private static readonly SheetOf<Thing> Things = new SheetOf<Thing>()
        .Text("Name", t => t.Name).Number("Density (g/mL)", t => t.Density).Date("Received", t => t.On).Moment("Posted", t => t.At);

    /// <summary>Commas for decimals, points for thousands: none of it may reach the file.</summary>
    public SheetTests() => CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");

    public void Dispose() => CultureInfo.CurrentCulture = _before;

    [Fact]
    public async Task Csv_GermanStudio_IsMarkedUtf8WithPointsAndIsoDates()
    {
        var bytes = await CsvAsync(new Thing("Rosenöl, fein", 0.980m, new DateOnly(2026, 11, 5), new DateTimeOffset(2026, 10, 26, 18, 12, 0, TimeSpan.Zero)));

        Assert.Equal([0xEF, 0xBB, 0xBF], bytes[..3]);
        Assert.Equal(
            "Name,Density (g/mL),Received,Posted\r\n\"Rosenöl, fein\",0.98,2026-11-05,2026-10-26T19:12:00+01:00\r\n", Encoding.UTF8.GetString(bytes[3..]));
    }

    /// <summary>The starts are those of CWE-1236; a number below zero stays a number.</summary>
    [Theory]
    [InlineData("=HYPERLINK(\"http://x\")")]
    [InlineData("+1+1")]
    [InlineData("-2+3")]
    [InlineData("@SUM(A1)")]
    public async Task Csv_TextThatBeginsLikeAFormula_IsMarkedAsText(string hostile)
    {
        var text = Encoding.UTF8.GetString(await CsvAsync(new Thing(hostile, -5.2m, null, null)));

        var row = text.Split("\r\n")[1];
        Assert.StartsWith("'", row.TrimStart('"'), StringComparison.Ordinal);
        Assert.EndsWith(",-5.2,,", row, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Xlsx_TextThatBeginsLikeAFormula_IsATextCellAndNumbersAreNumbers()
    {
        var sheet = await XlsxAsync(new Thing("=1+1", 0.980m, new DateOnly(2026, 11, 5), null));

        Assert.Empty(sheet.Descendants(Book + "f"));
        var row = sheet.Descendants(Book + "row").ElementAt(1).Elements(Book + "c").ToList();
        Assert.Equal("=1+1", row[0].Value);
        Assert.Contains((string?)row[0].Attribute("t"), new[] { "str", "inlineStr", "s" });
        Assert.Equal(0.98m, decimal.Parse(row[1].Element(Book + "v")!.Value, CultureInfo.InvariantCulture));
        Assert.DoesNotContain((string?)row[1].Attribute("t"), new[] { "str", "inlineStr", "s" });
        Assert.Equal(new DateTime(2026, 11, 5).ToOADate(), double.Parse(row[2].Element(Book + "v")!.Value, CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task Xlsx_NoRows_HasItsHeadings()
    {
        var sheet = await XlsxAsync();

        Assert.Equal(["Name", "Density (g/mL)", "Received", "Posted"], sheet.Descendants(Book + "row").First().Elements(Book + "c").Select(c => c.Value));
    }

    private static async Task<byte[]> CsvAsync(params Thing[] things)
    {
        using var to = new MemoryStream();
        await CsvSheet.WriteAsync(Things.Of(things, Berlin), to);
        return to.ToArray();
    }

    private static async Task<XDocument> XlsxAsync(params Thing[] things)
    {
        using var to = new MemoryStream();
        await XlsxSheet.WriteAsync(Things.Of(things, Berlin), "things", to);
        using var zip = new ZipArchive(new MemoryStream(to.ToArray()));
        await using var sheet = await zip.Entries.Single(e => e.FullName.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal)).OpenAsync();
        return await XDocument.LoadAsync(sheet, LoadOptions.None, CancellationToken.None);
    }

    private sealed record Thing(string Name, decimal? Density, DateOnly? On, DateTimeOffset? At);
}
