using MakerStudio.Core.Exchange;

namespace MakerStudio.Core.Tests.Exchange;

public class SheetOfTests
{
    [Theory]
    [InlineData("0.980", "0.98")]
    [InlineData("4.5078843478260869565217391304", "4.507884347826")]
    [InlineData("-1234567.50", "-1234567.5")]
    [InlineData("0.000000000001", "0.000000000001")]
    public async Task Number_IsWrittenInFullUpToTwelveDecimals(string number, string written)
    {
        var value = decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture);
        using var to = new MemoryStream();
        await CsvSheet.WriteAsync(new SheetOf<decimal>().Number("Cost (EUR)", n => n).Of([value], TimeZoneInfo.Utc), to);
        Assert.Equal([["Cost (EUR)"], [written]], CsvText.Read(System.Text.Encoding.UTF8.GetString(to.ToArray()).TrimStart('\uFEFF')));
    }

    [Fact]
    public void Heading_Twice_IsRefused() =>
        Assert.Throws<ArgumentException>(() => new SheetOf<int>().Number("Share (%)", n => n).Number("Share (%)", n => n));
}
