namespace MakerStudio.LocalPostgres;

/// <summary>Makes a new cluster with its roles and the empty database, all or nothing.</summary>
internal static class ClusterBirth
{
    /// <summary>Only the owner of a password gets in, and only through the socket.</summary>
    private const string AccessRules = """
        # Written by MakerStudio: the Unix socket only, a password for every role.
        local all all scram-sha-256

        """;

    public static async Task<IReadOnlyDictionary<string, string>> MakeAsync(
        ClusterFolder folder, ServerBinaries binaries, bool durable, CancellationToken stop)
    {
        var data = folder.UnfinishedData;
        if (Directory.Exists(data))
        {
            Directory.Delete(data, recursive: true);
        }

        string[] arguments =
        [
            "-D", data, "-U", LocalCluster.AdminRole, "--encoding=UTF8", "--locale=C.UTF-8", "--data-checksums",
            "--auth=peer", .. durable ? Array.Empty<string>() : ["--no-sync"],
        ];
        await ServerCommand.MustRunAsync("Making the database folder", binaries.InitDb, arguments, folder.ServerUser, stop: stop);
        var passwords = RolePasswords.Make(
            folder.Passwords, [LocalCluster.AdminRole, LocalCluster.OwnerRole, LocalCluster.AppRole]);
        await SingleUserAsync(folder, binaries, durable, "postgres", RolesAndDatabase(passwords), stop);
        await SingleUserAsync(folder, binaries, durable, LocalCluster.StudioDatabase, SchemaRights, stop);
        await File.WriteAllTextAsync(Path.Combine(data, "pg_hba.conf"), AccessRules, stop);
        Directory.Move(data, folder.Data);
        return passwords;
    }

    /// <summary>The owner migrates; the app's role gets what a migration grants it and may create nothing.</summary>
    private static string[] RolesAndDatabase(IReadOnlyDictionary<string, string> passwords) =>
    [
        $"ALTER ROLE {LocalCluster.AdminRole} PASSWORD '{passwords[LocalCluster.AdminRole]}'",
        $"CREATE ROLE {LocalCluster.OwnerRole} LOGIN PASSWORD '{passwords[LocalCluster.OwnerRole]}'",
        $"CREATE ROLE {LocalCluster.AppRole} LOGIN PASSWORD '{passwords[LocalCluster.AppRole]}'",
        $"CREATE DATABASE {LocalCluster.StudioDatabase} OWNER {LocalCluster.OwnerRole}",
        $"REVOKE ALL ON DATABASE {LocalCluster.StudioDatabase} FROM PUBLIC",
        $"GRANT CONNECT ON DATABASE {LocalCluster.StudioDatabase} TO {LocalCluster.AppRole}",
    ];

    private static readonly string[] SchemaRights =
    [
        $"ALTER SCHEMA public OWNER TO {LocalCluster.OwnerRole}",
        "REVOKE ALL ON SCHEMA public FROM PUBLIC",
        $"GRANT USAGE ON SCHEMA public TO {LocalCluster.AppRole}",
    ];

    /// <summary>Single-user mode needs no password, no socket and no client program. One statement a line.</summary>
    private static Task SingleUserAsync(
        ClusterFolder folder, ServerBinaries binaries, bool durable, string database, string[] statements, CancellationToken stop) =>
        ServerCommand.MustRunAsync(
            "Making the database's roles",
            binaries.Postgres,
            ["--single", "-D", folder.UnfinishedData, "-c", "exit_on_error=on", "-c", $"fsync={(durable ? "on" : "off")}", database],
            folder.ServerUser,
            string.Join('\n', statements) + "\n",
            stop);
}
