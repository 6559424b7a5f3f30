using MakerStudio.Core.Exchange;
using MakerStudio.Core.Tests.Exchange;

namespace MakerStudio.Core.Tests.Published;

/// <summary>
/// RFC 4180 section 2, rules 5 to 7 (read in a copy of its text): a field with a line break, a double quote or a comma
/// stands in double quotes, and a double quote inside is doubled; other fields may stand without.
/// OWASP ASVS 5 requirement 1.2.10 (read second-hand): those rules, and a field that begins with = + - @, tab or the zero
/// character gets a single quote in front. OWASP's page on CSV injection adds the carriage return (read second-hand).
/// </summary>
public class CsvFormatTests
{
    /// <summary>The examples of rules 6 and 7, without the quotes that rule 5 leaves open.</summary>
    [Theory]
    [InlineData("b \r\nbb", "aaa,\"b \r\nbb\",ccc\r\n")]
    [InlineData("b\"bb", "aaa,\"b\"\"bb\",ccc\r\n")]
    [InlineData("b,bb", "aaa,\"b,bb\",ccc\r\n")]
    [InlineData("bbb", "aaa,bbb,ccc\r\n")]
    public void Row_IsWrittenByTheRules(string field, string row)
    {
        Assert.Equal(row, CsvCell.Row(new[] { "aaa", field, "ccc" }.Select(CsvCell.Text)));
        Assert.Equal(["aaa", field, "ccc"], Assert.Single(CsvText.Read(row)));
    }

    /// <summary>As the rules print them, quotes round every field: a reader finds the same.</summary>
    [Theory]
    [InlineData("\"aaa\",\"b \r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", "b \r\nbb")]
    [InlineData("\"aaa\",\"b\"\"bb\",\"ccc\"\r\nzzz,yyy,xxx", "b\"bb")]
    public void Example_OfTheRules_SaysWhatOurRowSays(string example, string field)
    {
        var ours = CsvCell.Row(new[] { "aaa", field, "ccc" }.Select(CsvCell.Text)) + CsvCell.Row("zzz", "yyy", "xxx");
        Assert.Equal(CsvText.Read(example), CsvText.Read(ours));
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+44 20", "'+44 20")]
    [InlineData("-5.2", "'-5.2")]
    [InlineData("@home", "'@home")]
    [InlineData("\tx", "\"'\tx\"")]
    [InlineData("\rx", "\"'\rx\"")]
    [InlineData("\0x", "'\0x")]
    public void Text_ThatBeginsLikeAFormula_GetsASingleQuote(string text, string cell) => Assert.Equal(cell, CsvCell.Text(text));
}
