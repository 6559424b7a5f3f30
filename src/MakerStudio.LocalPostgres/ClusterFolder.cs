using System.Security.Cryptography;
using System.Text;

namespace MakerStudio.LocalPostgres;

/// <summary>The places inside a cluster's folder, and the lock that lets one process at a time use it.</summary>
internal sealed class ClusterFolder : IDisposable
{
    /// <summary>Bytes of a Unix socket's path at most: sun_path of unix(7) holds 108 with the closing zero.</summary>
    public const int LongestSocketPath = 107;

    /// <summary>Names the socket file together with the folder; Npgsql's and psql's default.</summary>
    public const int Port = 5432;

    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    private readonly FileStream _lock;

    private ClusterFolder(string root, string? serverUser, string socket, FileStream held)
    {
        Root = root;
        ServerUser = serverUser;
        Socket = socket;
        _lock = held;
    }

    public string Root { get; }

    /// <summary>The user to run server programs as; null when this process's own user will do.</summary>
    public string? ServerUser { get; }

    public string Socket { get; }

    public string Data => DataIn(Root);

    /// <summary>A cluster in the making; becomes <see cref="Data"/> in one step, so a half-made one is never used.</summary>
    public string UnfinishedData => Path.Combine(Root, "data.unfinished");

    public string Log => Path.Combine(Root, "log");

    public string Passwords => PasswordsIn(Root);

    /// <summary>The major version that wrote the data, or null when there is none yet.</summary>
    public int? DataMajor
    {
        get
        {
            var file = Path.Combine(Data, "PG_VERSION");
            return File.Exists(file) ? int.Parse(File.ReadAllText(file).Trim()) : null;
        }
    }

    public static string DataIn(string root) => Path.Combine(root, "data");

    public static string PasswordsIn(string root) => Path.Combine(root, "pgpass");

    /// <summary>Inside the cluster's folder; under the temporary folder when that path is too long for a socket.</summary>
    public static string SocketFor(string root)
    {
        var socket = Path.Combine(root, "run");
        return Encoding.UTF8.GetByteCount($"{socket}/.s.PGSQL.{Port}") <= LongestSocketPath
            ? socket
            : $"/tmp/makerstudio-{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(root)))[..16]}";
    }

    /// <summary>Whether a process holds the folder's lock now.</summary>
    public static bool IsInUse(string root)
    {
        var path = LockIn(root);
        if (!File.Exists(path))
        {
            return false;
        }

        try
        {
            using var free = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            return false;
        }
        catch (IOException)
        {
            return true;
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
    }

    public static async Task<ClusterFolder> OpenAsync(LocalClusterOptions options, CancellationToken stop)
    {
        if (OperatingSystem.IsWindows())
        {
            throw new PlatformNotSupportedException("The private Postgres runs on Linux. Set ConnectionStrings__Studio to a Postgres of your own.");
        }

        var root = Path.GetFullPath(options.Folder);
        var serverUser = ServerUserOf(options);
        FileStream held;
        try
        {
            Directory.CreateDirectory(root);
            File.SetUnixFileMode(root, OwnerOnly);
            held = new FileStream(LockIn(root), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (UnauthorizedAccessException refusal)
        {
            throw new LocalPostgresException(
                $"The folder {root} cannot be written by the user {Environment.UserName}. Choose another with STUDIO_DATA, or change its owner.", refusal);
        }
        catch (IOException taken) when (Directory.Exists(root))
        {
            throw new LocalPostgresException(
                $"Another MakerStudio already runs with the folder {root}. Use that one, or stop it first.", taken);
        }

        try
        {
            await GiveToServerUserAsync(root, serverUser, stop);
            var socket = await SocketFolderAsync(root, serverUser, stop);
            return new ClusterFolder(root, serverUser, socket, held);
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    public void Dispose() => _lock.Dispose();

    private static string LockIn(string root) => Path.Combine(root, "in-use.lock");

    private static string? ServerUserOf(LocalClusterOptions options)
    {
        if (!Environment.IsPrivilegedProcess)
        {
            return null;
        }

        return File.ReadLines("/etc/passwd").Any(line => line.StartsWith(options.ServerUser + ":", StringComparison.Ordinal))
            ? options.ServerUser
            : throw new LocalPostgresException(
                $"Postgres refuses to run as root, and there is no user '{options.ServerUser}' to run it as. "
                + "Install Debian's postgresql package, which creates it, or start MakerStudio as an ordinary user.");
    }

    private static async Task GiveToServerUserAsync(string root, string? serverUser, CancellationToken stop)
    {
        if (serverUser is null)
        {
            return;
        }

        await ServerCommand.MustRunAsync("Handing the folder to the server's user", "chown", [serverUser, root], stop: stop);
        var (exitCode, _) = await ServerCommand.RunAsync("test", ["-w", root], serverUser, stop: stop);
        if (exitCode != 0)
        {
            throw new LocalPostgresException(
                $"The user '{serverUser}', who runs Postgres, cannot reach {root}: a folder above it is closed to others. "
                + "Choose a folder under /var/lib with STUDIO_DATA, or open the folders above it (chmod o+x).");
        }
    }

    private static async Task<string> SocketFolderAsync(string root, string? serverUser, CancellationToken stop)
    {
        var socket = SocketFor(root);
        await ServerCommand.RunAsync("mkdir", ["-m", "700", socket], serverUser, stop: stop);
        var (exitCode, _) = await ServerCommand.RunAsync("test", ["-O", socket, "-a", "!", "-L", socket], serverUser, stop: stop);
        return exitCode == 0
            ? socket
            : throw new LocalPostgresException($"The folder {socket} for the server's socket could not be made, or belongs to somebody else.");
    }
}
