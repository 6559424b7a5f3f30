using System.Globalization;
using MakerStudio.Services;
using Npgsql;

namespace MakerStudio.Browser.Tests.Host;

/// <summary>A studio that can be filled through its services, wherever it runs.</summary>
public interface IStudio
{
    /// <summary>Who acts.</summary>
    Actor Ana { get; }

    T Get<T>()
        where T : notnull;

    /// <summary>One value of the database, as the app's role sees it.</summary>
    Task<T> ValueAsync<T>(string sql, params object[] values);
}

internal static class Rows
{
    public static async Task<T> ValueAsync<T>(string connectionString, string sql, object[] values)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values)
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        }

        var found = await command.ExecuteScalarAsync();
        return found is T right ? right : (T)Convert.ChangeType(found!, typeof(T), CultureInfo.InvariantCulture);
    }
}
