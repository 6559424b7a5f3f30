using System.Globalization;
using MakerStudio.Core.Exchange;

namespace MakerStudio.Core.Tests.Exchange;

public class DateTextTests
{
    [Theory]
    [InlineData("2026-11-05", DateOrder.DayMonthYear)]
    [InlineData("2026-11-05", DateOrder.MonthDayYear)]
    [InlineData("2026/11/05", DateOrder.DayMonthYear)]
    [InlineData(" 2026-11-5 ", DateOrder.YearMonthDay)]
    public void Read_YearFirst_IsTheSameDayInEveryStudio(string text, DateOrder own) => Assert.Equal((new DateOnly(2026, 11, 5), null), DateText.Read(text, own));

    [Theory]
    [InlineData("25.11.2026", DateOrder.DayMonthYear, "2026-11-25")]
    [InlineData("11/25/2026", DateOrder.MonthDayYear, "2026-11-25")]
    [InlineData("11-11-2026", DateOrder.DayMonthYear, "2026-11-11")]
    [InlineData("11-11-2026", DateOrder.MonthDayYear, "2026-11-11")]
    [InlineData("29/2/2028", DateOrder.DayMonthYear, "2028-02-29")]
    public void Read_OwnOrderThatIsOneDay_IsRead(string text, DateOrder own, string day) =>
        Assert.Equal((DateOnly.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture), null), DateText.Read(text, own));

    [Theory]
    [InlineData("03/04/2026", DateOrder.DayMonthYear, "“03/04/2026” could be two days. Write it as 2026-11-14.")]
    [InlineData("03.04.2026", DateOrder.MonthDayYear, "“03.04.2026” could be two days. Write it as 2026-11-14.")]
    [InlineData("11/25/2026", DateOrder.DayMonthYear, "“11/25/2026” is not a day as this studio writes it. Write it as 2026-11-14.")]
    [InlineData("25.11.2026", DateOrder.MonthDayYear, "“25.11.2026” is not a day as this studio writes it. Write it as 2026-11-14.")]
    [InlineData("31/02/2026", DateOrder.DayMonthYear, "“31/02/2026” is not a day as this studio writes it. Write it as 2026-11-14.")]
    [InlineData("25.11.26", DateOrder.DayMonthYear, "“25.11.26” has no year of four digits. Write it as 2026-11-14.")]
    [InlineData("2026-13-01", DateOrder.DayMonthYear, "There is no day “2026-13-01”. Write it as 2026-11-14.")]
    [InlineData("0000-01-01", DateOrder.DayMonthYear, "There is no day “0000-01-01”. Write it as 2026-11-14.")]
    [InlineData("Nov 2026", DateOrder.DayMonthYear, "“Nov 2026” is not a day. Write it as 2026-11-14.")]
    [InlineData("46000", DateOrder.DayMonthYear, "“46000” is not a day. Write it as 2026-11-14.")]
    public void Read_AnythingElse_IsNotGuessed(string text, DateOrder own, string why) => Assert.Equal((null, why), DateText.Read(text, own));

    [Theory]
    [InlineData("de-DE", DateOrder.DayMonthYear)]
    [InlineData("en-IE", DateOrder.DayMonthYear)]
    [InlineData("en-US", DateOrder.MonthDayYear)]
    [InlineData("sv-SE", DateOrder.YearMonthDay)]
    [InlineData("", DateOrder.MonthDayYear)]
    public void OrderOf_Culture(string culture, DateOrder order) => Assert.Equal(order, DateText.OrderOf(CultureInfo.GetCultureInfo(culture)));
}
