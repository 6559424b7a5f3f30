using MudBlazor.Services;

namespace MakerStudio.Web.Shell;

/// <summary>What the host calls to have pages with our look.</summary>
public static class ShellSetup
{
    /// <summary>Where the sign-out form in the menu posts to.</summary>
    public const string SignOutPath = "/account/sign-out";

    private const string OneYear = "public, max-age=31536000, immutable";

    public static WebApplicationBuilder AddStudioShell(this WebApplicationBuilder builder)
    {
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();
        builder.Services.AddMudServices();
        builder.Services.AddScoped<ShellState>();
        builder.Services.AddSingleton<StudioCulture>();
        builder.Services.AddSingleton<Today.TodayRead>();
        builder.Services.AddAuthorization();
        builder.Services.AddCascadingAuthenticationState();
        if (builder.Services.All(s => s.ServiceType != typeof(TimeProvider)))
        {
            builder.Services.AddSingleton(TimeProvider.System);
        }

        return builder;
    }

    /// <summary>Words for what goes wrong; call it first among the middleware.</summary>
    public static WebApplication UseStudioErrorPages(this WebApplication app)
    {
        if (!app.Environment.IsDevelopment())
        {
            app.UseExceptionHandler("/error", createScopeForErrors: true);
        }

        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        return app;
    }

    /// <summary>Numbers and dates as the studio has set them; health questions do without.</summary>
    public static WebApplication UseStudioCulture(this WebApplication app)
    {
        var culture = app.Services.GetRequiredService<StudioCulture>();
        app.UseWhen(context => !context.Request.Path.StartsWithSegments("/health"), pages => pages.Use(culture.UseAsync));
        return app;
    }

    public static WebApplication MapStudioShell(this WebApplication app)
    {
        app.MapStaticAssets().AllowAnonymous();
        app.MapGet("/theme.css", (HttpContext context) =>
        {
            context.Response.Headers.CacheControl = OneYear;
            return Results.Text(StudioTheme.Sheet, "text/css");
        }).AllowAnonymous();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode();
        return app;
    }
}
