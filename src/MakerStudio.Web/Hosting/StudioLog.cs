using Serilog;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace MakerStudio.Web.Hosting;

/// <summary>The log on the console: short lines for people, one JSON object a line inside a container.</summary>
internal static class StudioLog
{
    private const string Line = "{Timestamp:HH:mm:ss} {Level:u3} {Message:l}{NewLine}{Exception}";

    /// <summary>
    /// Requests are not logged: their paths can carry one-time links. Nor are statements with their values.
    /// </summary>
    public static WebApplicationBuilder AddStudioLog(this WebApplicationBuilder builder)
    {
        var log = new LoggerConfiguration()
            .MinimumLevel.Information()
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .MinimumLevel.Override("Microsoft.Hosting.Lifetime", LogEventLevel.Information)
            // "No XML encryptor configured" at each start: the keys lie in the studio's own database on purpose, see docs/decisions/private-postgres.md.
            .MinimumLevel.Override("Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager", LogEventLevel.Error)
            .MinimumLevel.Override("System.Net.Http", LogEventLevel.Warning)
            .ReadFrom.Configuration(builder.Configuration);
        var inContainer = builder.Configuration["DOTNET_RUNNING_IN_CONTAINER"] == "true";
        log = inContainer ? log.WriteTo.Console(new RenderedCompactJsonFormatter()) : log.WriteTo.Console(outputTemplate: Line, formatProvider: null);
        Log.Logger = log.CreateLogger();
        builder.Services.AddSerilog(Log.Logger);
        return builder;
    }
}
