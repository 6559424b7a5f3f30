using System.Net.Sockets;

namespace MakerStudio.Tests.Shared;

/// <summary>Whether a container engine answers, found out before a library for containers is touched.</summary>
internal static class ContainerEngine
{
    private const string UsualSocket = "/var/run/docker.sock";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    /// <summary>Asks the engine's socket for <c>/_ping</c>; false when nothing answers within two seconds.</summary>
    public static async Task<bool> AnswersAsync()
    {
        const string scheme = "unix://";
        var host = Environment.GetEnvironmentVariable("DOCKER_HOST");
        var path = host?.StartsWith(scheme, StringComparison.Ordinal) == true ? host[scheme.Length..] : UsualSocket;
        if (!File.Exists(path))
        {
            return false;
        }

        using var handler = new SocketsHttpHandler
        {
            ConnectCallback = async (_, stop) =>
            {
                var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
                await socket.ConnectAsync(new UnixDomainSocketEndPoint(path), stop);
                return new NetworkStream(socket, ownsSocket: true);
            },
        };
        using var client = new HttpClient(handler) { Timeout = Patience };
        try
        {
            using var answer = await client.GetAsync(new Uri("http://localhost/_ping"));
            return answer.IsSuccessStatusCode;
        }
        catch (Exception silent) when (silent is HttpRequestException or TaskCanceledException or SocketException)
        {
            return false;
        }
    }
}
