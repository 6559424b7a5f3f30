namespace MakerStudio.LocalPostgres;

/// <summary>How a private Postgres is to be kept.</summary>
/// <param name="Folder">
/// The folder that holds everything of this cluster: data, log, socket and the roles' passwords. Made when missing.
/// </param>
public sealed record LocalClusterOptions(string Folder)
{
    /// <summary>
    /// True (the default): a commit that was answered survives a power cut. False is for throw-away test clusters only.
    /// </summary>
    public bool Durable { get; init; } = true;

    /// <summary>
    /// The folder of the server binaries. Null: <c>STUDIO_PG_BIN</c>, then <c>PATH</c>, then Debian's folders.
    /// </summary>
    public string? BinFolder { get; init; }

    /// <summary>
    /// The user the server runs as when this process is root, which Postgres refuses to be. Without effect otherwise.
    /// </summary>
    public string ServerUser { get; init; } = "postgres";

    /// <summary>Most connections at once.</summary>
    public int MaxConnections { get; init; } = 100;

    /// <summary>Receives what happens to the server, in whole sentences.</summary>
    public Action<ClusterEvent>? Log { get; init; }

    /// <summary>The clock that paces restarts.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;
}

/// <summary>Something that happened to the server.</summary>
/// <param name="Trouble">True when a person should know of it.</param>
/// <param name="Text">What happened, what was kept, what follows.</param>
public sealed record ClusterEvent(bool Trouble, string Text);

/// <summary>The private Postgres cannot be had; the message says why and what to do, for the person at the machine.</summary>
public sealed class LocalPostgresException : Exception
{
    public LocalPostgresException(string message) : base(message)
    {
    }

    public LocalPostgresException(string message, Exception cause) : base(message, cause)
    {
    }
}
