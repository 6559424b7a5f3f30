using System.Globalization;
using System.Net;
using MakerStudio.Services.Schema;
using MakerStudio.Web.Finished;
using MakerStudio.Web.Storeroom;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.AspNetCore.SignalR;

namespace MakerStudio.Web.Hosting;

/// <summary>What stands between the network and the pages.</summary>
internal static class StudioFront
{
    public const string LivePath = "/health/live";
    public const string ReadyPath = "/health/ready";

    /// <summary>Where the studio is served when nothing else is set.</summary>
    public const string UsualAddress = "http://localhost:5080";

    /// <summary>Bytes of one message from a page; a long method text fits, an upload goes by HTTP instead.</summary>
    private const long LargestMessage = 128 * 1024;

    /// <summary>Addresses or networks (10.0.0.0/8) of reverse proxies whose forwarded headers are believed, comma between.</summary>
    private const string ProxiesKey = "STUDIO_PROXIES";

    /// <summary>Dates and numbers follow this culture when a person has not chosen one.</summary>
    private const string CultureKey = "STUDIO_CULTURE";

    private const string UsualCulture = "en-GB";

    private static readonly string[] AddressKeys = ["urls", "http_ports", "https_ports"];

    public static WebApplicationBuilder AddStudioFront(this WebApplicationBuilder builder)
    {
        if (AddressKeys.All(key => string.IsNullOrEmpty(builder.Configuration[key]))
            && !builder.Configuration.GetSection("Kestrel:Endpoints").Exists())
        {
            builder.WebHost.UseUrls(UsualAddress);
        }

        builder.WebHost.ConfigureKestrel(kestrel => kestrel.AddServerHeader = false);
        builder.Services.Configure<HubOptions>(hub => hub.MaximumReceiveMessageSize = LargestMessage);
        builder.Services.Configure<ForwardedHeadersOptions>(options => Believe(options, builder.Configuration[ProxiesKey]));
        builder.Services.Configure<RequestLocalizationOptions>(options => Speak(options, builder.Configuration[CultureKey]));
        builder.Services.AddHealthChecks().AddStudioDatabase();
        return builder;
    }

    /// <summary>First of the middleware: whoever comes later sees the true address, method and culture. Before error pages too, which may run a request anew.</summary>
    public static WebApplication UseStudioFront(this WebApplication app)
    {
        if (!string.IsNullOrWhiteSpace(app.Configuration[ProxiesKey]))
        {
            app.UseForwardedHeaders();
        }

        app.Use(PaperEndpoints.SealAsync);
        app.Use(LabelEndpoints.SealAsync);
        app.UseSecurityHeaders(SecurityHeaders.Policy());
        app.Use(ForeignOrigin.RefuseAsync);
        app.Use(HeadRequests.AnswerAsync);
        app.UseRequestLocalization();
        return app;
    }

    /// <summary>Live: the process answers. Ready: every registered check (the database) passes.</summary>
    public static WebApplication MapStudioHealth(this WebApplication app)
    {
        app.MapGet(LivePath, () => "ok").AllowAnonymous();
        app.MapHealthChecks(ReadyPath).AllowAnonymous();
        return app;
    }

    internal static void Believe(ForwardedHeadersOptions options, string? proxies)
    {
        options.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost;
        options.KnownProxies.Clear();
        options.KnownIPNetworks.Clear();
        foreach (var proxy in (proxies ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (IPAddress.TryParse(proxy, out var address))
            {
                options.KnownProxies.Add(address);
            }
            else if (System.Net.IPNetwork.TryParse(proxy, out var network))
            {
                options.KnownIPNetworks.Add(network);
            }
            else
            {
                throw new HostingException($"{ProxiesKey} holds '{proxy}', which is neither an address nor a network such as 10.0.0.0/8.");
            }
        }
    }

    private static void Speak(RequestLocalizationOptions options, string? culture)
    {
        var name = string.IsNullOrWhiteSpace(culture) ? UsualCulture : culture;
        CultureInfo chosen;
        try
        {
            chosen = CultureInfo.GetCultureInfo(name, predefinedOnly: true);
        }
        catch (CultureNotFoundException unknown)
        {
            throw new HostingException($"{CultureKey} is '{name}', which is no known culture; en-GB, en-US or de-DE are.", unknown);
        }

        options.DefaultRequestCulture = new(chosen);
        options.SupportedCultures = [chosen];
        options.SupportedUICultures = [chosen];
        options.RequestCultureProviders.Clear();
    }
}
