using MakerStudio.Web.Account;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Http;

namespace MakerStudio.Web.Tests.Account;

public sealed class KnownHereTests
{
    private readonly KnownHere _known = new(new EphemeralDataProtectionProvider());

    [Fact]
    public void Remember_ThenRead_LatestFirst()
    {
        var (ana, bo) = (Guid.CreateVersion7(), Guid.CreateVersion7());

        var cookie = Remembered(null, ana);
        cookie = Remembered(cookie, bo);
        cookie = Remembered(cookie, ana);

        Assert.Equal([ana, bo], _known.Read(With(cookie)));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("made-up")]
    [InlineData("CfDJ8AAAA")]
    public void Read_NoCookieOrAMadeUpOne_IsNobody(string? cookie) => Assert.Empty(_known.Read(With(cookie)));

    private string Remembered(string? before, Guid person)
    {
        var context = With(before);
        _known.Remember(context, person);
        var header = context.Response.Headers.SetCookie.ToString();
        Assert.Contains("httponly", header, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(person.ToString(), header, StringComparison.OrdinalIgnoreCase);
        return header.Split(';')[0].Split('=', 2)[1];
    }

    private static DefaultHttpContext With(string? cookie)
    {
        var context = new DefaultHttpContext();
        if (cookie is not null)
        {
            context.Request.Headers.Cookie = $"studio-known-here={cookie}";
        }

        return context;
    }
}
