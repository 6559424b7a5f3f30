using System.Globalization;
using MakerStudio.Services;
using MakerStudio.Services.Accounts;

namespace MakerStudio.Web.Shell;

/// <summary>
/// Numbers and dates follow the culture set in the studio. It is read once and again when the settings change, so that a
/// request costs nothing; a circuit keeps the culture of the request it began with.
/// </summary>
internal sealed class StudioCulture : IDisposable
{
    private readonly StudioSettings _settings;
    private readonly IDisposable _hearing;
    private CultureInfo? _culture;

    public StudioCulture(StudioSettings settings, StudioNews news)
    {
        _settings = settings;
        _hearing = news.Subscribe(item =>
        {
            _culture = item.Topic is Topics.Studio or Topics.Anything ? null : _culture;
            return Task.CompletedTask;
        });
    }

    public async Task UseAsync(HttpContext context, RequestDelegate next)
    {
        _culture ??= await ReadAsync(context.RequestAborted);
        if (_culture is { } culture)
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (culture, culture);
        }

        await next(context);
    }

    public void Dispose() => _hearing.Dispose();

    private async Task<CultureInfo?> ReadAsync(CancellationToken cancel)
    {
        try
        {
            return await _settings.ReadAsync(cancel) is { } studio ? CultureInfo.GetCultureInfo(studio.Culture) : null;
        }
        catch (CultureNotFoundException)
        {
            return null;
        }
    }
}
