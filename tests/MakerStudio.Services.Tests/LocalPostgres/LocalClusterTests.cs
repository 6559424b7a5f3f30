using System.Collections.Concurrent;
using System.Diagnostics;
using MakerStudio.LocalPostgres;
using Npgsql;

namespace MakerStudio.Services.Tests.LocalPostgres;

/// <summary>The private Postgres, with durable settings on, in a folder of its own for each test.</summary>
public sealed class LocalClusterTests : IAsyncLifetime
{
    private static readonly TimeSpan RestartPatience = TimeSpan.FromSeconds(30);

    private readonly ConcurrentQueue<ClusterEvent> _events = new();
    private LocalClusterOptions _options = null!;

    public Task InitializeAsync()
    {
        _options = new LocalClusterOptions(Path.Combine(Path.GetTempPath(), $"makerstudio-cluster-{Guid.NewGuid():N}")) { Log = _events.Enqueue };
        return Task.CompletedTask;
    }

    public async Task DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        Assert.True(await LocalCluster.DeleteAsync(_options));
    }

    [Fact]
    public async Task Start_NewFolder_IsDurableChecksummedAndOnTheSocketOnly()
    {
        await using var cluster = await LocalCluster.StartAsync(_options);
        var admin = cluster.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.AdminRole);

        Assert.Equal("", await AskAsync(admin, "SHOW listen_addresses"));
        foreach (var setting in new[] { "fsync", "synchronous_commit", "full_page_writes", "data_checksums" })
        {
            Assert.Equal("on", await AskAsync(admin, $"SHOW {setting}"));
        }

        Assert.Equal("UTF8", await AskAsync(admin, "SHOW server_encoding"));
        Assert.Equal("scram-sha-256", await AskAsync(admin, "SELECT string_agg(DISTINCT auth_method, ',') FROM pg_hba_file_rules"));
    }

    [Fact]
    public async Task Start_AnyUser_ServerIsNotRootAndItsSecretsAreItsOwn()
    {
        await using var cluster = await LocalCluster.StartAsync(_options);

        var userLine = File.ReadLines($"/proc/{cluster.ServerProcessId}/status").Single(line => line.StartsWith("Uid:", StringComparison.Ordinal));
        Assert.NotEqual("0", userLine.Split('\t')[1]);
        var passwords = Path.Combine(_options.Folder, "pgpass");
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(passwords));
        }

        Assert.Equal(3, File.ReadAllLines(passwords).Select(line => line.Split(':')[4]).Distinct().Count());
    }

    [Fact]
    public async Task Roles_OwnerCreates_AppMayOnlyDoWhatIsGranted()
    {
        await using var cluster = await LocalCluster.StartAsync(_options);
        var owner = cluster.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.OwnerRole);
        var app = cluster.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.AppRole);
        await AskAsync(owner, "CREATE TABLE shelf (jar int); INSERT INTO shelf VALUES (7)");

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, (await RefusalAsync(app, "SELECT jar FROM shelf")).SqlState);
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, (await RefusalAsync(app, "CREATE TABLE mine (jar int)")).SqlState);
        await AskAsync(owner, "GRANT SELECT ON shelf TO studio_app");
        Assert.Equal(7, await AskAsync(app, "SELECT jar FROM shelf"));
        var wrong = new NpgsqlConnectionStringBuilder(app) { Password = "guess", Pooling = false };
        Assert.Equal(PostgresErrorCodes.InvalidPassword, (await RefusalAsync(wrong.ConnectionString, "SELECT 1")).SqlState);
    }

    [Fact]
    public async Task Restart_CleanStop_KeepsDataAndPasswords()
    {
        string owner;
        await using (var first = await LocalCluster.StartAsync(_options))
        {
            owner = first.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.OwnerRole);
            await AskAsync(owner, "CREATE TABLE shelf (jar int); INSERT INTO shelf VALUES (7)");
        }

        Assert.False(File.Exists(Path.Combine(_options.Folder, "data", "postmaster.pid")));
        NpgsqlConnection.ClearAllPools();
        await using var second = await LocalCluster.StartAsync(_options);

        Assert.Equal(7, await AskAsync(owner, "SELECT jar FROM shelf"));
        Assert.DoesNotContain(_events, happened => happened.Trouble);
    }

    [Fact]
    public async Task ServerKilled_WhileAppRuns_RestartsWithEveryConfirmedRow()
    {
        await using var cluster = await LocalCluster.StartAsync(_options);
        var owner = cluster.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.OwnerRole);
        await AskAsync(owner, "CREATE TABLE shelf (jar int); INSERT INTO shelf SELECT generate_series(1, 500)");
        await using var open = new NpgsqlConnection(owner);
        await open.OpenAsync();
        await using var unconfirmed = await open.BeginTransactionAsync();
        await using var insert = new NpgsqlCommand("INSERT INTO shelf VALUES (999)", open, unconfirmed);
        await insert.ExecuteNonQueryAsync();

        var killed = cluster.ServerProcessId;
        await KillAsync(killed);
        var waited = Stopwatch.StartNew();
        while (cluster.ServerProcessId == killed && waited.Elapsed < RestartPatience)
        {
            await Task.Delay(50);
        }

        Assert.NotEqual(killed, cluster.ServerProcessId);
        NpgsqlConnection.ClearAllPools();
        Assert.Equal(500L, await AskAsync(owner, "SELECT count(*) FROM shelf"));
        Assert.Contains(_events, happened => happened.Trouble && happened.Text.Contains("restarted", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Start_ServerLeftByAKilledApp_ReplacesItAndKeepsData()
    {
        string owner;
        await using (var first = await LocalCluster.StartAsync(_options))
        {
            owner = first.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.OwnerRole);
            await AskAsync(owner, "CREATE TABLE shelf (jar int); INSERT INTO shelf VALUES (7)");
        }

        NpgsqlConnection.ClearAllPools();
        var orphan = await StartWithoutAppAsync();
        await using var second = await LocalCluster.StartAsync(_options);

        Assert.NotEqual(orphan, second.ServerProcessId);
        Assert.Contains(_events, happened => happened.Trouble && happened.Text.Contains($"process {orphan}", StringComparison.Ordinal));
        Assert.Equal(7, await AskAsync(owner, "SELECT jar FROM shelf"));
    }

    [Fact]
    public async Task Start_NumberInPidFileBelongsToAnotherProgram_StartsAndLeavesThatAlone()
    {
        await (await LocalCluster.StartAsync(_options)).DisposeAsync();
        using var other = Process.Start("sleep", "60");
        try
        {
            var data = Path.Combine(_options.Folder, "data");
            await File.WriteAllTextAsync(Path.Combine(data, "postmaster.pid"), $"{other.Id}\n{data}\n1\n5432\n\n\n\nready   \n");
            await using var cluster = await LocalCluster.StartAsync(_options);

            Assert.NotEqual(other.Id, cluster.ServerProcessId);
            Assert.False(other.HasExited);
        }
        finally
        {
            other.Kill();
        }
    }

    [Fact]
    public async Task Start_SecondTimeOnTheSameFolder_IsRefusedInWords()
    {
        await using var cluster = await LocalCluster.StartAsync(_options);

        var refusal = await Assert.ThrowsAsync<LocalPostgresException>(() => LocalCluster.StartAsync(_options));

        Assert.Contains("already runs", refusal.Message);
        Assert.False(await LocalCluster.DeleteAsync(_options));
        Assert.Equal(1, await AskAsync(cluster.ConnectionString("studio", LocalCluster.AppRole), "SELECT 1"));
    }

    [Fact]
    public async Task FindRunning_OnlyWhileAnAppRuns_ReachesItsServer()
    {
        Assert.Null(LocalCluster.FindRunning(_options));
        await using (await LocalCluster.StartAsync(_options))
        {
            var beside = LocalCluster.FindRunning(_options);
            Assert.Equal("studio", await AskAsync(beside!.ConnectionString("studio", LocalCluster.AppRole), "SELECT current_database()"));
        }

        Assert.Null(LocalCluster.FindRunning(_options));
    }

    [Fact]
    public async Task Start_DataOfAnotherMajor_SaysSoAndChangesNothing()
    {
        await (await LocalCluster.StartAsync(_options)).DisposeAsync();
        var versionFile = Path.Combine(_options.Folder, "data", "PG_VERSION");
        await File.WriteAllTextAsync(versionFile, "11\n");

        var refusal = await Assert.ThrowsAsync<LocalPostgresException>(() => LocalCluster.StartAsync(_options));

        Assert.Contains("written by Postgres 11", refusal.Message);
        Assert.Contains("Nothing was changed", refusal.Message);
        Assert.Equal("11\n", await File.ReadAllTextAsync(versionFile));
    }

    [Fact]
    public async Task Start_FirstStartWasCutOff_BeginsAfresh()
    {
        var half = Path.Combine(_options.Folder, "data.unfinished");
        Directory.CreateDirectory(half);
        await File.WriteAllTextAsync(Path.Combine(half, "PG_VERSION"), "15\n");

        await using var cluster = await LocalCluster.StartAsync(_options);

        Assert.False(Directory.Exists(half));
        Assert.Equal(1, await AskAsync(cluster.ConnectionString("studio", LocalCluster.AppRole), "SELECT 1"));
    }

    [Fact]
    public async Task Start_FolderPathTooLongForASocket_StillStarts()
    {
        var parent = _options.Folder;
        var deep = _options with { Folder = Path.Combine(parent, new string('d', 120)) };
        Directory.CreateDirectory(parent);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(parent, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.OtherExecute);
        }

        await using (var cluster = await LocalCluster.StartAsync(deep))
        {
            Assert.Equal(1, await AskAsync(cluster.ConnectionString("studio", LocalCluster.AppRole), "SELECT 1"));
        }

        Assert.True(await LocalCluster.DeleteAsync(deep));
    }

    [Fact]
    public async Task Start_FolderWithoutServerPrograms_NamesTheFolder()
    {
        var refusal = await Assert.ThrowsAsync<LocalPostgresException>(() => LocalCluster.StartAsync(_options with { BinFolder = "/usr/share" }));

        Assert.Contains("/usr/share does not hold", refusal.Message);
    }

    /// <summary>A server on the test's folder with nobody watching it, as a killed app leaves behind.</summary>
    private async Task<int> StartWithoutAppAsync()
    {
        var binaries = await ServerBinaries.FindAsync(null, null);
        var data = Path.Combine(_options.Folder, "data");
        string[] start = [Path.Combine(binaries.Folder, "pg_ctl"), "start", "-w", "-D", data, "-l", "/dev/null", "-o", $"-c listen_addresses= -c unix_socket_directories={_options.Folder}/run"];
        var asServer = Environment.IsPrivilegedProcess ? ["runuser", "-u", "postgres", "--", .. start] : start;
        using var process = Process.Start(new ProcessStartInfo(asServer[0], asServer[1..]) { WorkingDirectory = "/", RedirectStandardOutput = true })!;
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
        return int.Parse((await File.ReadAllLinesAsync(Path.Combine(data, "postmaster.pid")))[0]);
    }

    private static async Task KillAsync(int processId)
    {
        using var kill = Process.Start("kill", ["-9", $"{processId}"]);
        await kill.WaitForExitAsync();
        Assert.Equal(0, kill.ExitCode);
    }

    private static async Task<object?> AskAsync(string connectionString, string statement)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(statement, connection);
        return await command.ExecuteScalarAsync();
    }

    private static Task<PostgresException> RefusalAsync(string connectionString, string statement) =>
        Assert.ThrowsAsync<PostgresException>(() => AskAsync(connectionString, statement));
}
