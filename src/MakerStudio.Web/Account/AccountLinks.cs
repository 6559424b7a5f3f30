using MakerStudio.Web.Hosting;

namespace MakerStudio.Web.Account;

/// <summary>One-time links as people follow them.</summary>
internal static class AccountLinks
{
    /// <summary>Where people reach the studio, when it is not where the host listens.</summary>
    private const string AddressKey = "STUDIO_ADDRESS";

    public static string FirstRun(Uri address, string token) => Of(address, "first-run", token);

    public static string Join(Uri address, string token) => Of(address, "join", token);

    public static string NewPassphrase(Uri address, string token) => Of(address, "new-passphrase", token);

    /// <summary>The address to print where no request tells it.</summary>
    public static Uri AddressOf(IServiceProvider services)
    {
        var configuration = services.GetRequiredService<IConfiguration>();
        return configuration[AddressKey] is { Length: > 0 } named && Uri.TryCreate(named, UriKind.Absolute, out var address)
            ? address
            : HealthCheck.AddressOf(configuration["urls"], configuration["http_ports"]);
    }

    private static string Of(Uri address, string page, string token) => new Uri(address, $"/{page}?token={token}").ToString();
}
