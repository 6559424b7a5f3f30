namespace MakerStudio.LocalPostgres;

/// <summary>
/// A Postgres of the studio's own: made on first use, reached through a Unix socket only, restarted when it dies,
/// stopped with the app. One process at a time uses a folder.
/// </summary>
public sealed class LocalCluster : IAsyncDisposable
{
    /// <summary>The database the studio lives in.</summary>
    public const string StudioDatabase = "studio";

    /// <summary>Superuser; for backups and tests, never used by the app.</summary>
    public const string AdminRole = "studio_admin";

    /// <summary>Owns the schema and runs migrations.</summary>
    public const string OwnerRole = "studio_owner";

    /// <summary>The role the app works as: only what migrations grant it.</summary>
    public const string AppRole = "studio_app";

    private static readonly TimeSpan FirstPause = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan LongestPause = TimeSpan.FromSeconds(10);

    /// <summary>Time for a fast shutdown to write everything out before an immediate one (which recovery mends).</summary>
    private const int FastStopSeconds = 60;

    /// <summary>After a kill the old server's children need a moment to notice.</summary>
    private const int StartAttempts = 8;

    private readonly LocalClusterOptions _options;
    private readonly ClusterFolder _folder;
    private readonly ServerBinaries _binaries;
    private readonly ClusterConnections _connections;
    private readonly CancellationTokenSource _stopping = new();
    private readonly SemaphoreSlim _closing = new(1);
    private Postmaster _postmaster;
    private Task _watch = Task.CompletedTask;
    private bool _closed;

    private LocalCluster(
        LocalClusterOptions options, ClusterFolder folder, ServerBinaries binaries,
        ClusterConnections connections, Postmaster postmaster)
    {
        _options = options;
        _folder = folder;
        _binaries = binaries;
        _connections = connections;
        _postmaster = postmaster;
    }

    /// <summary>The major version of the server.</summary>
    public int Major => _binaries.Major;

    /// <summary>The process number of the server as it runs now; changes with a restart.</summary>
    public int ServerProcessId => _postmaster.ProcessId;

    /// <summary>Starts the cluster in the folder, making it first when there is none.</summary>
    /// <exception cref="LocalPostgresException">
    /// No server programs, a folder in use, out of reach or written by another major version; the message says what to do.
    /// </exception>
    public static async Task<LocalCluster> StartAsync(LocalClusterOptions options, CancellationToken stop = default)
    {
        var folder = await ClusterFolder.OpenAsync(options, stop);
        try
        {
            var binaries = await ServerBinaries.FindAsync(options.BinFolder, folder.DataMajor, stop);
            RefuseAnotherMajor(folder, binaries);
            await StopOrphanAsync(folder, binaries, options, stop);
            var passwords = folder.DataMajor is null
                ? await ClusterBirth.MakeAsync(folder, binaries, options.Durable, stop)
                : RolePasswords.Read(folder.Passwords);
            var postmaster = await FirstStartAsync(folder, binaries, options, stop);
            var cluster = new LocalCluster(options, folder, binaries, new ClusterConnections(folder.Socket, passwords), postmaster);
            cluster._watch = Task.Run(cluster.WatchAsync, CancellationToken.None);
            options.Log?.Invoke(new ClusterEvent(false, $"The private Postgres {binaries.Major} runs; its data are in {folder.Data}."));
            return cluster;
        }
        catch
        {
            folder.Dispose();
            throw;
        }
    }

    /// <summary>Stops whatever server still runs on the folder and deletes it with everything in it.</summary>
    /// <returns>False, with nothing changed, when another process uses the folder.</returns>
    public static async Task<bool> DeleteAsync(LocalClusterOptions options, CancellationToken stop = default)
    {
        try
        {
            using var folder = await ClusterFolder.OpenAsync(options, stop);
            if (PostmasterFile.LivingServer(folder.Data) is not null)
            {
                var binaries = await ServerBinaries.FindAsync(options.BinFolder, folder.DataMajor, stop);
                await StopServerAsync(folder, binaries, "immediate", stop);
            }

            Directory.Delete(folder.Root, recursive: true);
            if (Directory.Exists(folder.Socket))
            {
                Directory.Delete(folder.Socket, recursive: true);
            }

            return true;
        }
        catch (LocalPostgresException)
        {
            return false;
        }
    }

    /// <summary>
    /// How to reach the server that another process of ours runs on the folder now, so that a short command (a backup, a
    /// new password) works beside the open studio. Null when no such process runs.
    /// </summary>
    public static ClusterConnections? FindRunning(LocalClusterOptions options)
    {
        var root = Path.GetFullPath(options.Folder);
        var data = ClusterFolder.DataIn(root);
        return ClusterFolder.IsInUse(root) && PostmasterFile.LivingServer(data) is not null
            ? new ClusterConnections(ClusterFolder.SocketFor(root), RolePasswords.Read(ClusterFolder.PasswordsIn(root)))
            : null;
    }

    /// <inheritdoc cref="ClusterConnections.ConnectionString"/>
    public string ConnectionString(string database, string role) => _connections.ConnectionString(database, role);

    /// <summary>Stops the server cleanly: open transactions are rolled back, everything answered is on disk.</summary>
    public async ValueTask DisposeAsync()
    {
        await _closing.WaitAsync();
        try
        {
            if (_closed)
            {
                return;
            }

            _closed = true;
            await _stopping.CancelAsync();
            await _watch;
            await StopServerAsync(_folder, _binaries, "fast", CancellationToken.None);
            await _postmaster.UntilExitAsync(CancellationToken.None);
            _postmaster.Dispose();
            _folder.Dispose();
            _stopping.Dispose();
            _options.Log?.Invoke(new ClusterEvent(false, "The private Postgres has stopped cleanly."));
        }
        finally
        {
            _closing.Release();
        }
    }

    private static void RefuseAnotherMajor(ClusterFolder folder, ServerBinaries binaries)
    {
        if (folder.DataMajor is { } major && major != binaries.Major)
        {
            throw new LocalPostgresException(
                $"The data in {folder.Data} were written by Postgres {major}; the server programs found in {binaries.Folder} "
                + $"are version {binaries.Major}, which cannot read them. Nothing was changed. "
                + $"Install Postgres {major} (apt-get install postgresql-{major}) or set STUDIO_PG_BIN to its folder. "
                + $"To move to version {binaries.Major}, make a backup with version {major} running and restore it into a new folder.");
        }
    }

    /// <summary>
    /// We hold the folder's lock, so a server that still runs here was left by an app that was killed. It is stopped and
    /// started anew rather than joined: only a child of ours can be watched, and only so are its settings known.
    /// </summary>
    private static async Task StopOrphanAsync(
        ClusterFolder folder, ServerBinaries binaries, LocalClusterOptions options, CancellationToken stop)
    {
        if (PostmasterFile.LivingServer(folder.Data) is { } orphan)
        {
            options.Log?.Invoke(new ClusterEvent(true,
                $"A Postgres (process {orphan}) still ran from an earlier start that was cut off. It is being stopped and started again; no data are lost."));
            await StopServerAsync(folder, binaries, "fast", stop);
        }
    }

    private static async Task StopServerAsync(ClusterFolder folder, ServerBinaries binaries, string mode, CancellationToken stop)
    {
        if (PostmasterFile.LivingServer(folder.Data) is null)
        {
            return;
        }

        string[] Arguments(string how) => ["stop", "-D", folder.Data, "-m", how, "-w", "-t", $"{FastStopSeconds}"];
        var (exitCode, _) = await ServerCommand.RunAsync(binaries.PgCtl, Arguments(mode), folder.ServerUser, stop: stop);
        if (exitCode != 0 && PostmasterFile.LivingServer(folder.Data) is not null)
        {
            await ServerCommand.MustRunAsync("Stopping Postgres", binaries.PgCtl, Arguments("immediate"), folder.ServerUser, stop: stop);
        }
    }

    private static async Task<Postmaster> FirstStartAsync(
        ClusterFolder folder, ServerBinaries binaries, LocalClusterOptions options, CancellationToken stop)
    {
        var pause = FirstPause;
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                return await Postmaster.StartAsync(folder, binaries, Settings(folder, options), stop);
            }
            catch (LocalPostgresException early) when (attempt < StartAttempts && early.Message.Contains("still in use", StringComparison.Ordinal))
            {
                await Task.Delay(pause, options.Time, stop);
                pause *= 2;
            }
        }
    }

    /// <summary>Restarts the server whenever it ends without having been asked to.</summary>
    private async Task WatchAsync()
    {
        try
        {
            while (true)
            {
                await _postmaster.UntilExitAsync(_stopping.Token);
                _options.Log?.Invoke(new ClusterEvent(true,
                    $"Postgres ended by itself (code {_postmaster.ExitCode}). Everything that was confirmed is kept; it is being restarted."));
                await RestartAsync();
            }
        }
        catch (OperationCanceledException)
        {
            // Asked to stop.
        }
    }

    private async Task RestartAsync()
    {
        for (var pause = FirstPause; ; pause = pause * 2 < LongestPause ? pause * 2 : LongestPause)
        {
            await Task.Delay(pause, _options.Time, _stopping.Token);
            try
            {
                var next = await Postmaster.StartAsync(_folder, _binaries, Settings(_folder, _options), _stopping.Token);
                _postmaster.Dispose();
                _postmaster = next;
                _options.Log?.Invoke(new ClusterEvent(false, "Postgres runs again."));
                return;
            }
            catch (LocalPostgresException failed)
            {
                _options.Log?.Invoke(new ClusterEvent(true, $"{failed.Message} It will be tried again."));
            }
        }
    }

    private static IEnumerable<(string Name, string Value)> Settings(ClusterFolder folder, LocalClusterOptions options)
    {
        var durable = options.Durable ? "on" : "off";
        return
        [
            ("listen_addresses", ""),
            ("port", $"{ClusterFolder.Port}"),
            ("unix_socket_directories", folder.Socket),
            ("unix_socket_permissions", "0700"),
            ("fsync", durable),
            ("synchronous_commit", durable),
            ("full_page_writes", durable),
            ("max_connections", $"{options.MaxConnections}"),
            ("timezone", "UTC"),
            ("log_timezone", "UTC"),
            // A file a weekday, written over after a week: the log never fills the disk.
            ("logging_collector", "on"),
            ("log_directory", folder.Log),
            ("log_filename", "postgres-%a.log"),
            ("log_truncate_on_rotation", "on"),
            ("log_rotation_age", "1d"),
            ("log_rotation_size", "0"),
        ];
    }
}
