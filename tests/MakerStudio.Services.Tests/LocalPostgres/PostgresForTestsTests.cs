using MakerStudio.Tests.Shared;
using Npgsql;

namespace MakerStudio.Services.Tests.LocalPostgres;

/// <summary>What every other database test stands on.</summary>
public sealed class PostgresForTestsTests
{
    [Fact]
    public async Task CreateDatabase_FromTemplate_CarriesItsRowsAndRights()
    {
        var postgres = await PostgresForTests.GetAsync();
        var (template, clone) = ($"template_{Guid.NewGuid():N}", $"clone_{Guid.NewGuid():N}");
        var owner = await postgres.CreateDatabaseAsync(template);
        await RunAsync(owner, "CREATE TABLE shelf (jar int); INSERT INTO shelf VALUES (7); GRANT SELECT ON shelf TO studio_app");

        await postgres.CreateDatabaseAsync(clone, template);

        var app = postgres.ConnectionString(clone, PostgresForTests.AppRole);
        Assert.Equal(7, await RunAsync(app, "SELECT jar FROM shelf"));
        var refusal = await Assert.ThrowsAsync<PostgresException>(() => RunAsync(app, "DELETE FROM shelf"));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refusal.SqlState);
        await postgres.DropDatabaseAsync(clone);
        await postgres.DropDatabaseAsync(template);
    }

    private static async Task<object?> RunAsync(string connectionString, string statement)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(statement, connection);
        return await command.ExecuteScalarAsync();
    }
}
