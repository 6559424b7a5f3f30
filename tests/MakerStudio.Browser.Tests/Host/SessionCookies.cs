using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Http;

namespace MakerStudio.Browser.Tests.Host;

/// <summary>
/// Sign-in cookies without a last day: the browser would hold the studio's day, which the test chooses, against its own
/// and throw the cookie away. The ticket inside still ends by the studio's clock.
/// </summary>
internal sealed class SessionCookies : ICookieManager
{
    private readonly ChunkingCookieManager _usual = new();

    public string? GetRequestCookie(HttpContext context, string key) => _usual.GetRequestCookie(context, key);

    public void AppendResponseCookie(HttpContext context, string key, string? value, CookieOptions options)
    {
        options.Expires = null;
        _usual.AppendResponseCookie(context, key, value, options);
    }

    public void DeleteCookie(HttpContext context, string key, CookieOptions options) => _usual.DeleteCookie(context, key, options);
}
