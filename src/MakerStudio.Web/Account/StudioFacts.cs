using System.Globalization;
using MakerStudio.Services;
using MakerStudio.Services.Accounts;
using Microsoft.AspNetCore.Localization;

namespace MakerStudio.Web.Account;

/// <summary>The studio's settings kept at hand for every request; read anew when they change.</summary>
internal sealed class StudioFacts : IDisposable
{
    private readonly StudioSettings _settings;
    private readonly IDisposable _subscription;
    private volatile StudioRow? _row;

    public StudioFacts(StudioSettings settings, StudioNews news)
    {
        _settings = settings;
        _subscription = news.Subscribe(Hear);
    }

    /// <summary>Null until the studio is set up.</summary>
    public async ValueTask<StudioRow?> ReadAsync() => _row ??= await _settings.ReadAsync();

    private Task Hear(News news)
    {
        if (news.Topic is Topics.Studio or Topics.Anything)
        {
            _row = null;
        }

        return Task.CompletedTask;
    }

    public void Dispose() => _subscription.Dispose();
}

/// <summary>Numbers and dates follow the studio's own language and region, whatever the browser asks for.</summary>
internal sealed class StudioCulture : RequestCultureProvider
{
    public override async Task<ProviderCultureResult?> DetermineProviderCultureResult(HttpContext httpContext) =>
        await httpContext.RequestServices.GetRequiredService<StudioFacts>().ReadAsync() is { } studio ? new ProviderCultureResult(studio.Culture) : null;
}

internal static class StudioCultureSetup
{
    /// <summary>Before there is a studio, the host's own choice stands.</summary>
    public static IServiceCollection AddStudioCulture(this IServiceCollection services) =>
        services.PostConfigure<RequestLocalizationOptions>(options =>
        {
            // Any culture the settings accept.
            options.SupportedCultures = null;
            options.SupportedUICultures = [CultureInfo.GetCultureInfo("en")];
            options.RequestCultureProviders.Insert(0, new StudioCulture());
        });
}
