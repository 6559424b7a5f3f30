using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Identity;

namespace MakerStudio.Web.Account;

/// <summary>What the host calls to have people sign in.</summary>
public static class AccountSetup
{
    public const string SignInPath = "/sign-in";
    public const string ReturnParameter = "returnUrl";

    public static WebApplicationBuilder AddStudioAccounts(this WebApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddScoped<CurrentPerson>();
        services.AddScoped<AuthenticationStateProvider, StandingSignIn>();
        services.AddSingleton<KnownHere>();
        services.Configure<CookieAuthenticationOptions>(IdentityConstants.ApplicationScheme, cookie =>
        {
            cookie.LoginPath = SignInPath;
            cookie.AccessDeniedPath = SignInPath;
            cookie.ReturnUrlParameter = ReturnParameter;
        });

        // Whatever does not say otherwise needs a sign-in, addresses that lead nowhere included.
        services.AddAuthorizationBuilder().SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build());
        return builder;
    }

    /// <summary>After routing, before antiforgery and the pages.</summary>
    public static WebApplication UseStudioAccounts(this WebApplication app)
    {
        app.UseAuthentication();
        app.UseAuthorization();
        return app;
    }

    public static WebApplication MapStudioAccounts(this WebApplication app)
    {
        app.MapPasskeyOptions();
        app.MapSignOut();
        return app;
    }
}
