using MakerStudio.Services.Schema;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace MakerStudio.Services.Accounts;

/// <summary>How long a sign-in lasts and how soon it is looked at again.</summary>
public static class SignInRules
{
    /// <summary>A sign-in that is not used for this long ends.</summary>
    public static readonly TimeSpan Lasts = TimeSpan.FromDays(14);

    /// <summary>
    /// How often a request's or an open page's sign-in is compared with the database. Commands compare every time; this
    /// bounds how long a removed person can still read.
    /// </summary>
    public static readonly TimeSpan LooksAgain = TimeSpan.FromMinutes(1);

    internal static IServiceCollection AddStudioSignIn(this IServiceCollection services)
    {
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies();
        services.AddIdentityCore<Person>().AddEntityFrameworkStores<StudioDb>().AddSignInManager();
        services.Configure<SecurityStampValidatorOptions>(options => options.ValidationInterval = LooksAgain);
        services.ConfigureApplicationCookie(cookie =>
        {
            cookie.Cookie.Name = "studio-sign-in";
            cookie.Cookie.HttpOnly = true;
            cookie.Cookie.SameSite = SameSiteMode.Lax;
            cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
            cookie.ExpireTimeSpan = Lasts;
            cookie.SlidingExpiration = true;
        });
        services.AddSingleton<Passphrases>();
        services.AddScoped(sp => new SignIn(
            sp.GetRequiredService<StudioStore>(), sp.GetRequiredService<Passphrases>(), sp.GetRequiredService<SignInManager<Person>>()));
        return services;
    }
}
