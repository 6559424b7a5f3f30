using System.Diagnostics;
using MakerStudio.LocalPostgres;
using Npgsql;
using Testcontainers.PostgreSql;

namespace MakerStudio.Tests.Shared;

/// <summary>
/// The one Postgres of this test process: the server named by <c>STUDIO_TEST_POSTGRES</c> (a superuser's connection
/// string), else a container when an engine answers, else a private cluster in a temporary folder, removed at exit.
/// </summary>
public sealed class PostgresForTests
{
    /// <summary>Owns schemas and runs migrations, as in the real studio.</summary>
    public const string OwnerRole = LocalCluster.OwnerRole;

    /// <summary>The restricted role the app works as.</summary>
    public const string AppRole = LocalCluster.AppRole;

    private const string Variable = "STUDIO_TEST_POSTGRES";
    private const string Image = "postgres:17-alpine";
    private const string FolderPrefix = "makerstudio-tests-";

    /// <summary>Of the two roles on a server that is not our private cluster; a test server holds nothing worth guarding.</summary>
    private const string RolePassword = "studio-tests";

    private static readonly Lazy<Task<PostgresForTests>> Started = new(StartAsync);

    private readonly Func<string, string, string> _connectionString;

    private PostgresForTests(string adminConnectionString, Func<string, string, string> connectionString)
    {
        AdminConnectionString = adminConnectionString;
        _connectionString = connectionString;
    }

    /// <summary>Superuser on the server's maintenance database.</summary>
    public string AdminConnectionString { get; }

    /// <summary>The server of this process, started on the first call.</summary>
    public static Task<PostgresForTests> GetAsync() => Started.Value;

    /// <summary>Connection string of <see cref="OwnerRole"/> or <see cref="AppRole"/> for a database.</summary>
    public string ConnectionString(string database, string role) => _connectionString(database, role);

    /// <summary>
    /// Makes a database owned by <see cref="OwnerRole"/>, in which <see cref="AppRole"/> may only do what it is granted.
    /// </summary>
    /// <param name="name">A name of its own, e.g. with a new Guid in it: a server named by the environment may be shared.</param>
    /// <param name="template">A database to clone, with nobody connected to it; null for an empty one.</param>
    /// <returns>The owner's connection string.</returns>
    public async Task<string> CreateDatabaseAsync(string name, string? template = null)
    {
        if (template is not null)
        {
            NpgsqlConnection.ClearAllPools();
        }

        await using var admin = await OpenAsync(AdminConnectionString);
        var source = template is null ? "" : $" TEMPLATE \"{template}\"";
        await RunAsync(admin, $"CREATE DATABASE \"{name}\" OWNER {OwnerRole}{source}");
        await RunAsync(admin, $"GRANT CONNECT ON DATABASE \"{name}\" TO {AppRole}");
        if (template is null)
        {
            var inside = new NpgsqlConnectionStringBuilder(AdminConnectionString) { Database = name, Pooling = false };
            await using var fresh = await OpenAsync(inside.ConnectionString);
            await RunAsync(fresh, $"ALTER SCHEMA public OWNER TO {OwnerRole}; REVOKE ALL ON SCHEMA public FROM PUBLIC; GRANT USAGE ON SCHEMA public TO {AppRole}");
        }

        return ConnectionString(name, OwnerRole);
    }

    /// <summary>Drops a database, whoever is connected to it.</summary>
    public async Task DropDatabaseAsync(string name)
    {
        await using var admin = await OpenAsync(AdminConnectionString);
        await RunAsync(admin, $"DROP DATABASE IF EXISTS \"{name}\" WITH (FORCE)");
    }

    private static async Task<PostgresForTests> StartAsync()
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } given)
        {
            return await OnServerAsync(given);
        }

        if (await ContainerEngine.AnswersAsync())
        {
            // The library's own reaper removes the container when this process is gone.
            var container = new PostgreSqlBuilder(Image).WithCommand("-c", "max_connections=300").Build();
            await container.StartAsync();
            return await OnServerAsync(container.GetConnectionString());
        }

        return await OnPrivateClusterAsync();
    }

    private static async Task<PostgresForTests> OnServerAsync(string adminConnectionString)
    {
        await using var admin = await OpenAsync(adminConnectionString);
        foreach (var role in new[] { OwnerRole, AppRole })
        {
            // Two test processes may come here at once on a shared server; whoever is second finds the role made.
            await RunAsync(admin, $"""
                DO $$ BEGIN CREATE ROLE {role} LOGIN PASSWORD '{RolePassword}';
                EXCEPTION WHEN duplicate_object OR unique_violation THEN NULL; END $$
                """);
        }

        return new PostgresForTests(adminConnectionString, (database, role) =>
            new NpgsqlConnectionStringBuilder(adminConnectionString) { Database = database, Username = role, Password = RolePassword }.ConnectionString);
    }

    private static async Task<PostgresForTests> OnPrivateClusterAsync()
    {
        await RemoveLeftoversAsync();
        var folder = Path.Combine(Path.GetTempPath(), $"{FolderPrefix}{Guid.NewGuid():N}");
        var options = new LocalClusterOptions(folder) { Durable = false, MaxConnections = 300 };
        var cluster = await LocalCluster.StartAsync(options);
        RemoveWhenThisProcessIsGone(folder);
        return new PostgresForTests(cluster.ConnectionString("postgres", LocalCluster.AdminRole), cluster.ConnectionString);
    }

    /// <summary>
    /// A test runner cuts its process off about 100 ms after the last test, too soon to tidy up in it; so a small shell
    /// waits for the process to be gone, then stops the server and removes the folder.
    /// </summary>
    private static void RemoveWhenThisProcessIsGone(string folder)
    {
        const string script = """
            exec >/dev/null 2>&1 </dev/null
            while kill -0 "$0"; do sleep 0.5; done
            server=$(head -n 1 "$1/data/postmaster.pid") && kill -QUIT "$server"
            for _ in $(seq 100); do kill -0 "$server" || break; sleep 0.1; done
            rm -rf "$1"
            """;
        Process.Start("setsid", ["sh", "-c", script, $"{Environment.ProcessId}", folder]).Dispose();
    }

    /// <summary>A test process that was killed together with that shell leaves a folder; the next one removes it.</summary>
    private static async Task RemoveLeftoversAsync()
    {
        foreach (var left in Directory.GetDirectories(Path.GetTempPath(), FolderPrefix + "*"))
        {
            try
            {
                await LocalCluster.DeleteAsync(new LocalClusterOptions(left));
            }
            catch (IOException)
            {
                // The shell of a test process that has just ended is removing the same folder.
            }
        }
    }

    private static async Task<NpgsqlConnection> OpenAsync(string connectionString)
    {
        var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        return connection;
    }

    private static async Task RunAsync(NpgsqlConnection connection, string statement)
    {
        await using var command = new NpgsqlCommand(statement, connection);
        await command.ExecuteNonQueryAsync();
    }
}
