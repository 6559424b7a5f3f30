using MakerStudio.Web.Today;

namespace MakerStudio.Web.Tests.Today;

public class TodayWordsTests
{
    [Theory]
    [InlineData(4, "Tonight")]
    [InlineData(5, "This morning")]
    [InlineData(12, "This afternoon")]
    [InlineData(17, "This evening")]
    [InlineData(23, "This evening")]
    public void PartOfDay_ByTheStudiosClock(int hour, string title) =>
        Assert.Equal(title, Words.PartOfDay(new DateTimeOffset(2026, 10, 26, hour, 0, 0, TimeSpan.FromHours(1))));

    [Theory]
    [InlineData(0.5, null)]
    [InlineData(3, "3 h ago")]
    [InlineData(47.9, "47 h ago")]
    [InlineData(49, "2 days ago")]
    public void Ago_InWords(double hours, string? words) => Assert.Equal(words, Words.Ago(TimeSpan.FromHours(hours)));
}
