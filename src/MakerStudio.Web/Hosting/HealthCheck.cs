namespace MakerStudio.Web.Hosting;

/// <summary>The health check of the container, which has no curl: the app asks itself.</summary>
internal static class HealthCheck
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <returns>0 when the studio on this machine is ready, else 1.</returns>
    public static async Task<int> AskAsync()
    {
        var address = AddressOf(Environment.GetEnvironmentVariable("ASPNETCORE_URLS"), Environment.GetEnvironmentVariable("ASPNETCORE_HTTP_PORTS"));
        using var client = new HttpClient { Timeout = Patience };
        try
        {
            using var answer = await client.GetAsync(new Uri(address, StudioFront.ReadyPath));
            Console.WriteLine($"{address} answers {(int)answer.StatusCode}");
            return answer.IsSuccessStatusCode ? 0 : 1;
        }
        catch (Exception silent) when (silent is HttpRequestException or TaskCanceledException)
        {
            Console.WriteLine($"{address} does not answer: {silent.Message}");
            return 1;
        }
    }

    /// <summary>The first plain address the studio listens on, seen from this machine.</summary>
    internal static Uri AddressOf(string? urls, string? ports)
    {
        var first = urls?.Split(';').FirstOrDefault(url => url.StartsWith("http://", StringComparison.OrdinalIgnoreCase));
        if (first is null && ports?.Split(';')[0] is { Length: > 0 } port)
        {
            first = $"http://localhost:{port}";
        }

        // Kestrel's words for "every address" are no names to call.
        var callable = (first ?? StudioFront.UsualAddress).Replace("//*", "//localhost", StringComparison.Ordinal)
            .Replace("//+", "//localhost", StringComparison.Ordinal).Replace("//0.0.0.0", "//localhost", StringComparison.Ordinal)
            .Replace("//[::]", "//localhost", StringComparison.Ordinal);
        return new Uri(callable);
    }
}
