using System.Data.Common;

namespace MakerStudio.LocalPostgres;

/// <summary>How the roles sign in to a cluster.</summary>
public sealed class ClusterConnections
{
    private readonly string _socket;
    private readonly IReadOnlyDictionary<string, string> _passwords;

    internal ClusterConnections(string socket, IReadOnlyDictionary<string, string> passwords)
    {
        _socket = socket;
        _passwords = passwords;
    }

    /// <summary>A connection string for Npgsql, through the socket, with the role's password.</summary>
    /// <param name="database">For example <see cref="LocalCluster.StudioDatabase"/>.</param>
    /// <param name="role">
    /// One of <see cref="LocalCluster.AdminRole"/>, <see cref="LocalCluster.OwnerRole"/>, <see cref="LocalCluster.AppRole"/>.
    /// </param>
    public string ConnectionString(string database, string role) => new DbConnectionStringBuilder
    {
        ["Host"] = _socket,
        ["Port"] = ClusterFolder.Port,
        ["Database"] = database,
        ["Username"] = role,
        ["Password"] = _passwords[role],
    }.ConnectionString;
}
