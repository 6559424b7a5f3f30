using System.Data.Common;
using MakerStudio.LocalPostgres;
using Serilog;

namespace MakerStudio.Web.Hosting;

/// <summary>
/// The Postgres the studio works on: the one named by <c>ConnectionStrings__Studio</c>, else a private one in the data
/// folder. Disposed last of all, so the private one outlives every request.
/// </summary>
/// <param name="OwnerConnectionString">For migrations: the role that owns the schema.</param>
/// <param name="AppConnectionString">For everything else.</param>
internal sealed record StudioDatabase(string OwnerConnectionString, string AppConnectionString) : IAsyncDisposable
{
    private const string AppKey = "Studio";
    private const string OwnerKey = "StudioOwner";
    private const string FolderKey = "STUDIO_DATA";
    private const string ClusterFolder = "postgres";

    /// <summary>Name of the data folder of a real studio.</summary>
    public const string UsualFolder = "makerstudio";

    /// <summary>The words by which a connection string may name the role.</summary>
    private static readonly string[] RoleKeys = ["Username", "User Id", "User Name", "UserId", "User"];

    private LocalCluster? Cluster { get; init; }

    /// <summary>The name the app signs in by, to be granted what it needs.</summary>
    public string? AppRole
    {
        get
        {
            var parts = new DbConnectionStringBuilder { ConnectionString = AppConnectionString };
            return RoleKeys
                .Select(key => parts.TryGetValue(key, out var role) ? role as string : null)
                .FirstOrDefault(role => role is not null);
        }
    }

    /// <summary>
    /// Chooses the database and starts it when it is the private one. Beside a studio that is already open, a command
    /// uses the server that runs.
    /// </summary>
    /// <param name="beside">True for a command that may run while the studio is open.</param>
    /// <param name="usualFolder">Name of the data folder where none is set.</param>
    public static async Task<StudioDatabase> ChooseAsync(IConfiguration configuration, bool beside, string usualFolder = UsualFolder)
    {
        if (configuration.GetConnectionString(AppKey) is { Length: > 0 } app)
        {
            return new StudioDatabase(configuration.GetConnectionString(OwnerKey) ?? app, app);
        }

        var options = new LocalClusterOptions(Path.Combine(FolderOf(configuration, usualFolder), ClusterFolder)) { Log = Say };
        if (beside && LocalCluster.FindRunning(options) is { } running)
        {
            return new StudioDatabase(
                running.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.OwnerRole),
                running.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.AppRole));
        }

        var cluster = await LocalCluster.StartAsync(options);
        return new StudioDatabase(
            cluster.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.OwnerRole),
            cluster.ConnectionString(LocalCluster.StudioDatabase, LocalCluster.AppRole)) { Cluster = cluster };
    }

    public ValueTask DisposeAsync() => Cluster?.DisposeAsync() ?? ValueTask.CompletedTask;

    /// <summary>
    /// <c>STUDIO_DATA</c>, else the user's data folder (XDG base directories). Root's home is closed to the database's
    /// user, so for root it is under /var/lib.
    /// </summary>
    internal static string FolderOf(IConfiguration configuration, string usualFolder)
    {
        if (configuration[FolderKey] is { Length: > 0 } named)
        {
            return Path.GetFullPath(named);
        }

        return Environment.IsPrivilegedProcess
            ? Path.Combine("/var/lib", usualFolder)
            : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), usualFolder);
    }

    private static void Say(ClusterEvent happened)
    {
        if (happened.Trouble)
        {
            Log.Warning("{Event}", happened.Text);
        }
        else
        {
            Log.Information("{Event}", happened.Text);
        }
    }
}
