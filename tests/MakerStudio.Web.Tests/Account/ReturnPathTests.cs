using MakerStudio.Web.Account;

namespace MakerStudio.Web.Tests.Account;

public sealed class ReturnPathTests
{
    [Theory]
    [InlineData("/")]
    [InlineData("/curing")]
    [InlineData("/find?q=RS-1&x=//y")]
    public void Local_WithinTheStudio_IsKept(string path) => Assert.Equal(path, ReturnPath.Local(path));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("//evil.example")]
    [InlineData("/\\evil.example")]
    [InlineData("\\\\evil.example")]
    [InlineData("https://evil.example")]
    [InlineData("javascript:alert(1)")]
    [InlineData("evil.example")]
    [InlineData("/\t/evil.example")]
    [InlineData("/\n/evil.example")]
    public void Local_ElsewhereOrNothing_IsTheFirstPage(string? path) => Assert.Equal("/", ReturnPath.Local(path));
}
