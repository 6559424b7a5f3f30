using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;

namespace MakerStudio.Web.Account;

/// <summary>
/// Who signed in on this device before, in a sealed cookie: only there does the sign-in page show names.
/// </summary>
internal sealed class KnownHere(IDataProtectionProvider protection)
{
    private const string Cookie = "studio-known-here";
    private const int Most = 6;
    private static readonly TimeSpan Lasts = TimeSpan.FromDays(365);
    private readonly IDataProtector _seal = protection.CreateProtector("People known on this device");

    public IReadOnlyList<Guid> Read(HttpContext context)
    {
        if (context.Request.Cookies[Cookie] is not { Length: > 0 } sealedIds)
        {
            return [];
        }

        try
        {
            return [.. _seal.Unprotect(sealedIds).Split(',').Select(Guid.Parse)];
        }
        catch (Exception broken) when (broken is CryptographicException or FormatException)
        {
            return [];
        }
    }

    public void Remember(HttpContext context, Guid personId)
    {
        var ids = Read(context).Where(id => id != personId).Prepend(personId).Take(Most);
        context.Response.Cookies.Append(Cookie, _seal.Protect(string.Join(',', ids)), new CookieOptions
        {
            HttpOnly = true, SameSite = SameSiteMode.Lax, Secure = context.Request.IsHttps, MaxAge = Lasts, IsEssential = true,
        });
    }
}
