using CsCheck;
using MakerStudio.Core.Exchange;

namespace MakerStudio.Core.Tests.Exchange;

public class CsvTests
{
    private static readonly Gen<string> Awkward = Gen.Char["='+-@\t\r\n\0\",; aé–＝"].Array[0, 8].Select(c => new string(c));

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+44 20", "'+44 20")]
    [InlineData("-5.2", "'-5.2")]
    [InlineData("@home", "'@home")]
    [InlineData("\tx", "\"'\tx\"")]
    [InlineData("\rx", "\"'\rx\"")]
    [InlineData("'=1", "''=1")]
    [InlineData("'tis", "'tis")]
    [InlineData("Fig, no. 3", "\"Fig, no. 3\"")]
    [InlineData("a;=1", "\"a;=1\"")]
    [InlineData("5\" wick", "\"5\"\" wick\"")]
    [InlineData("rate 5-2", "rate 5-2")]
    [InlineData(" x", "\" x\"")]
    [InlineData(null, "")]
    public void Text_NeverBeginsLikeAFormula(string? text, string cell) => Assert.Equal(cell, CsvCell.Text(text));

    [Fact]
    public void Numbers_StayNumbers()
    {
        Assert.Equal("-5.2", CsvCell.Number(-5.2m));
        Assert.Equal("67.374", CsvCell.Number(67.374m));
        Assert.Equal("1234567.5", CsvCell.Number(1234567.5m));
        Assert.Equal(string.Empty, CsvCell.Number(null));
        Assert.Equal("2026-11-25", CsvCell.Date(new DateOnly(2026, 11, 25)));
        Assert.Equal("2026-11-25T12:40:09+01:00", CsvCell.Moment(new DateTimeOffset(2026, 11, 25, 12, 40, 9, TimeSpan.FromHours(1))));
    }

    [Fact]
    public void AnyText_ComesBackAsItWas_AndNoCellBeginsLikeAFormula() =>
        Awkward.Array[1, 5].Sample(texts =>
        {
            var written = CsvCell.Row(texts.Select(CsvCell.Text));
            var read = CsvRows.Read(new StringReader(written)).ToList();
            return read.Count == 1
                && read[0].Cells.Select(CsvCell.TextOf).SequenceEqual(texts)
                && read[0].Cells.All(c => c.Length == 0 || !"=+-@\t\r\n\0＝＋－＠".Contains(c[0], StringComparison.Ordinal));
        });

    [Fact]
    public void Read_KeepsTheLineOnWhichARowBegins()
    {
        var rows = CsvRows.Read(new StringReader("a,b\r\n\"two\nlines\",2\n\n-5.2,\"\"\r3")).ToList();
        Assert.Equal([1L, 2L, 4L, 5L, 6L], rows.Select(r => r.Line));
        Assert.Equal(["two\nlines", "2"], rows[1].Cells);
        Assert.True(rows[2].IsEmpty);
        Assert.Equal(["-5.2", ""], rows[3].Cells);
        Assert.Equal(["3"], rows[4].Cells);
    }

    [Fact]
    public void Read_QuoteNeverClosed_SaysSo_AndReadsNoFurther()
    {
        var rows = CsvRows.Read(new StringReader("a\n\"b\nc\nd")).ToList();
        Assert.Equal(2, rows.Count);
        Assert.Equal("A quote is opened and never closed.", rows[1].Problem);
        var tooLong = CsvRows.Read(new StringReader("\"" + new string('x', CsvRows.MostCharacters) + "\"\nnext")).Single();
        Assert.StartsWith("The row is longer", tooLong.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("date;product;price", ';')]
    [InlineData("date,product,price", ',')]
    [InlineData("date\tproduct, size\tprice", '\t')]
    [InlineData("date", ',')]
    public void SeparatorOf_Heading(string heading, char separator) => Assert.Equal(separator, CsvRows.SeparatorOf(heading));
}
