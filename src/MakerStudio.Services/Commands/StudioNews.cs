using System.Collections.Concurrent;
using System.Text.Json;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace MakerStudio.Services;

/// <summary>Hears what any node committed (LISTEN/NOTIFY) and passes it to open screens.</summary>
public sealed partial class StudioNews : BackgroundService
{
    internal const string Channel = "studio_news";
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);
    private readonly string _connectionString;
    private readonly ILogger<StudioNews> _log;
    private readonly ConcurrentDictionary<Guid, Func<News, Task>> _hearers = new();

    internal StudioNews(string connectionString, ILogger<StudioNews> log)
    {
        // A line of its own, kept open; keep-alive notices a dead one.
        _connectionString = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false, KeepAlive = 15 }.ConnectionString;
        _log = log;
    }

    /// <summary>Calls <paramref name="hear"/> for every piece of news until disposed. It must not throw and must not block.</summary>
    public IDisposable Subscribe(Func<News, Task> hear)
    {
        var id = Guid.CreateVersion7();
        _hearers[id] = hear;
        return new Subscription(() => _hearers.TryRemove(id, out _));
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await using var line = new NpgsqlConnection(_connectionString);
                await line.OpenAsync(stoppingToken);
                line.Notification += (_, e) => _ = TellAsync(JsonSerializer.Deserialize<News>(e.Payload) ?? News.Anything);
                await using (var listen = new NpgsqlCommand($"listen {Channel}", line))
                {
                    await listen.ExecuteNonQueryAsync(stoppingToken);
                }

                // Whatever happened before the line stood was not heard.
                await TellAsync(News.Anything);
                while (true)
                {
                    await line.WaitAsync(stoppingToken);
                }
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e) when (e is NpgsqlException or IOException or JsonException or System.Net.Sockets.SocketException)
            {
                LineDown(e);
                await Task.Delay(Pause, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private async Task TellAsync(News news)
    {
        foreach (var hear in _hearers.Values)
        {
            try
            {
                await hear(news);
            }
            catch (Exception e)
            {
                // One screen's fault must not silence the others.
                HearerFailed(e);
            }
        }
    }

    [LoggerMessage(LogLevel.Warning, "The line for news is down; trying again.")]
    private partial void LineDown(Exception e);

    [LoggerMessage(LogLevel.Warning, "A screen could not take the news.")]
    private partial void HearerFailed(Exception e);

    private sealed class Subscription(Action end) : IDisposable
    {
        public void Dispose() => end();
    }
}
