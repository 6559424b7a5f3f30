using System.Text.RegularExpressions;

namespace MakerStudio.LocalPostgres;

/// <summary>A folder with the programs of a Postgres server, and the major version they are of.</summary>
public sealed partial record ServerBinaries(string Folder, int Major)
{
    /// <summary>Environment variable that names the folder and overrules every other place.</summary>
    public const string FolderVariable = "STUDIO_PG_BIN";

    private const string DebianFolder = "/usr/lib/postgresql";

    private static readonly string[] Needed = ["postgres", "initdb", "pg_ctl"];

    internal string Postgres => Path.Combine(Folder, "postgres");

    internal string InitDb => Path.Combine(Folder, "initdb");

    internal string PgCtl => Path.Combine(Folder, "pg_ctl");

    /// <summary>
    /// Finds the binaries: the folder given, else <see cref="FolderVariable"/>, else <c>PATH</c> and Debian's
    /// <c>/usr/lib/postgresql/*/bin</c>. Of several, the one of the wanted major version, else the newest.
    /// </summary>
    /// <param name="folder">A folder that must be used, or null.</param>
    /// <param name="wantedMajor">The major version a data folder was written by, or null for a new one.</param>
    /// <exception cref="LocalPostgresException">None is there.</exception>
    public static async Task<ServerBinaries> FindAsync(string? folder, int? wantedMajor, CancellationToken stop = default)
    {
        folder ??= Environment.GetEnvironmentVariable(FolderVariable) is { Length: > 0 } named ? named : null;
        var candidates = folder is null ? UsualFolders() : [folder];
        var found = new List<ServerBinaries>();
        foreach (var candidate in candidates.Distinct(StringComparer.Ordinal))
        {
            if (Needed.All(program => File.Exists(Path.Combine(candidate, program))) &&
                await MajorOfAsync(candidate, stop) is { } major)
            {
                found.Add(new ServerBinaries(candidate, major));
            }
        }

        return found.Find(binaries => binaries.Major == wantedMajor)
            ?? found.MaxBy(binaries => binaries.Major)
            ?? throw new LocalPostgresException(folder is null
                ? "No Postgres server programs were found on PATH or under /usr/lib/postgresql. "
                    + "On Debian: apt-get install postgresql. Or set STUDIO_PG_BIN to the folder that holds them."
                : $"The folder {folder} does not hold the Postgres programs {string.Join(", ", Needed)}. "
                    + "Set STUDIO_PG_BIN to the folder that does.");
    }

    private static IEnumerable<string> UsualFolders()
    {
        foreach (var entry in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':', StringSplitOptions.RemoveEmptyEntries))
        {
            yield return entry;
        }

        foreach (var version in Directory.Exists(DebianFolder) ? Directory.GetDirectories(DebianFolder) : [])
        {
            yield return Path.Combine(version, "bin");
        }
    }

    private static async Task<int?> MajorOfAsync(string folder, CancellationToken stop)
    {
        var answer = await ServerCommand.RunAsync(Path.Combine(folder, "postgres"), ["--version"], stop: stop);
        var match = VersionAnswer().Match(answer.Output);
        return match.Success ? int.Parse(match.Groups[1].Value) : null;
    }

    [GeneratedRegex(@"\(PostgreSQL\) (\d+)")]
    private static partial Regex VersionAnswer();
}
