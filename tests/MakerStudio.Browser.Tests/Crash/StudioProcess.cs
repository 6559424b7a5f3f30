using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using MakerStudio.Browser.Tests.Host;
using MakerStudio.LocalPostgres;
using MakerStudio.Services;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace MakerStudio.Browser.Tests.Crash;

/// <summary>
/// The built app as a process of its own with a private Postgres in a data folder of its own, as a studio runs it. It can
/// be killed and started again on the same folder and port.
/// </summary>
public sealed partial class StudioProcess : IStudio, IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(120);

    private readonly string _folder = Path.Combine(Path.GetTempPath(), $"makerstudio-killed-{Guid.NewGuid():N}");
    private readonly int _port = FreePort();
    private readonly List<string> _said = [];
    private Process? _process;
    private ServiceProvider? _services;

    public Uri Address => new($"http://localhost:{_port}/");
    public Actor Ana { get; private set; } = null!;

    private LocalClusterOptions Cluster => new(Path.Combine(_folder, "postgres"));

    private string AppConnectionString => (LocalCluster.FindRunning(Cluster) ?? throw new InvalidOperationException("Its Postgres does not run."))
        .ConnectionString(LocalCluster.StudioDatabase, LocalCluster.AppRole);

    /// <summary>Starts the app and waits until it answers.</summary>
    /// <returns>The link for the first person, when it printed one.</returns>
    public async Task<string?> StartAsync()
    {
        lock (_said)
        {
            _said.Clear();
        }

        var start = new ProcessStartInfo("dotnet", ["exec", Path.Combine(AppContext.BaseDirectory, "MakerStudio.Web.dll"), "--urls", Address.ToString()])
        {
            RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = AppContext.BaseDirectory,
            Environment = { ["STUDIO_DATA"] = _folder, ["ASPNETCORE_ENVIRONMENT"] = "Production" },
        };
        _process = Process.Start(start)!;
        _process.OutputDataReceived += Hear;
        _process.ErrorDataReceived += Hear;
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        using var client = new HttpClient { BaseAddress = Address };
        var waited = Stopwatch.StartNew();
        while (!await AnswersAsync(client))
        {
            Assert.False(_process.HasExited, $"The studio did not start: {Said}");
            Assert.True(waited.Elapsed < Patience, $"The studio did not answer in {Patience}: {Said}");
            await Task.Delay(100);
        }

        return FirstLink().Match(Said) is { Success: true } link ? link.Value : null;
    }

    /// <summary>As a power cut would: no time to tidy up. Its Postgres stays behind, as it does on a real machine.</summary>
    public async Task KillAsync()
    {
        _process!.Kill();
        await _process.WaitForExitAsync();
        await ForgetConnectionsAsync();
    }

    public async Task KnowAnaAsync() => Ana = new Actor(
        await ValueAsync<Guid>("select id from people where display_name = 'Ana'"),
        await ValueAsync<string>("select security_stamp from people where display_name = 'Ana'"));

    public T Get<T>()
        where T : notnull =>
        (_services ??= new ServiceCollection().AddLogging().AddStudioServices(AppConnectionString).BuildServiceProvider()).GetRequiredService<T>();

    public Task<T> ValueAsync<T>(string sql, params object[] values) => Rows.ValueAsync<T>(AppConnectionString, sql, values);

    /// <summary>Runs the app's own word for checking the books, beside the open studio.</summary>
    public async Task<(int ExitCode, string Said)> VerifyAsync()
    {
        var start = new ProcessStartInfo("dotnet", ["exec", Path.Combine(AppContext.BaseDirectory, "MakerStudio.Web.dll"), "verify"])
        {
            RedirectStandardOutput = true, WorkingDirectory = AppContext.BaseDirectory, Environment = { ["STUDIO_DATA"] = _folder },
        };
        using var verify = Process.Start(start)!;
        var said = await verify.StandardOutput.ReadToEndAsync();
        await verify.WaitForExitAsync();
        return (verify.ExitCode, said);
    }

    public async ValueTask DisposeAsync()
    {
        await ForgetConnectionsAsync();
        if (_process is { HasExited: false })
        {
            using var term = Process.Start("kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]);
            await _process.WaitForExitAsync();
        }

        _process?.Dispose();
        await LocalCluster.DeleteAsync(Cluster);
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>The next start brings a new server.</summary>
    private async Task ForgetConnectionsAsync()
    {
        if (_services is not null)
        {
            await _services.DisposeAsync();
            _services = null;
        }

        NpgsqlConnection.ClearAllPools();
    }

    private string Said
    {
        get
        {
            lock (_said)
            {
                return string.Join('\n', _said);
            }
        }
    }

    private void Hear(object sender, DataReceivedEventArgs heard)
    {
        lock (_said)
        {
            _said.Add(heard.Data ?? "");
        }
    }

    private static async Task<bool> AnswersAsync(HttpClient client)
    {
        try
        {
            using var answer = await client.GetAsync(new Uri("health/ready", UriKind.Relative));
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    [GeneratedRegex(@"https?://\S+/first-run\?token=\S+")]
    private static partial Regex FirstLink();
}
