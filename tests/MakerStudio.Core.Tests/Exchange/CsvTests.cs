using CsCheck;
using CsvHelper;
using MakerStudio.Core.Exchange;

namespace MakerStudio.Core.Tests.Exchange;

public class CsvTests
{
    private static readonly Gen<string> Awkward = Gen.Char["='+-@\t\r\n\0\",; aé–＝"].Array[0, 8].Select(c => new string(c));

    [Theory]
    [InlineData("'=1", "''=1")]
    [InlineData("'tis", "'tis")]
    [InlineData("Fig, no. 3", "\"Fig, no. 3\"")]
    [InlineData("a;=1", "\"a;=1\"")]
    [InlineData("5\" wick", "\"5\"\" wick\"")]
    [InlineData("rate 5-2", "rate 5-2")]
    [InlineData(" x", "\" x\"")]
    [InlineData(null, "")]
    public void Text_IsQuotedAndMarkedOnlyWhereItMustBe(string? text, string cell) => Assert.Equal(cell, CsvCell.Text(text));

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

    /// <summary>Read by CsvHelper, which knows nothing of how it was written.</summary>
    [Fact]
    public void AnyText_ComesBackAsItWas_AndNoCellBeginsLikeAFormula() =>
        Awkward.Array[1, 5].Sample(texts =>
        {
            var read = CsvText.Read(CsvCell.Row(texts.Select(CsvCell.Text)));
            return read.Count == 1
                && read[0].Select(CsvCell.TextOf).SequenceEqual(texts)
                && read[0].All(c => c.Length == 0 || !"=+-@\t\r\n\0＝＋－＠".Contains(c[0], StringComparison.Ordinal));
        });
}

/// <summary>Reads CSV as any program would, every row alike.</summary>
internal static class CsvText
{
    public static List<string[]> Read(string text)
    {
        using var reader = CsvReader.FromText(text, new CsvReaderOptions { HasHeader = false, SkipEmptyLines = false, MalformedData = CsvMalformedDataHandling.Throw });
        var rows = new List<string[]>();
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        }

        return rows;
    }
}
