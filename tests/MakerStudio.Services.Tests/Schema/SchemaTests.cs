using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace MakerStudio.Services.Tests.Schema;

public class SchemaTests
{
    [Fact]
    public void Model_AgainstTheLastMigration_HasNoPendingChanges()
    {
        using var db = new StudioDb(StudioDbOptions.For("Host=nowhere"));
        Assert.False(db.Database.HasPendingModelChanges(), "Add a migration: the model has changes that no migration holds.");
    }

    [Theory]
    [InlineData("movements")]
    [InlineData("lot_events")]
    [InlineData("acts")]
    [InlineData("unit_movements")]
    [InlineData("sales")]
    [InlineData("dispatches")]
    [InlineData("placements")]
    [InlineData("consignment_reports")]
    public async Task History_UpdateDeleteTruncateByTheAppsRole_IsRefused(string table)
    {
        await using var studio = await TestStudio.NewAsync();
        await AssertRefusedAsync(studio.AppConnectionString, $"update {table} set person_id = person_id", PostgresErrorCodes.InsufficientPrivilege);
        await AssertRefusedAsync(studio.AppConnectionString, $"delete from {table}", PostgresErrorCodes.InsufficientPrivilege);
        await AssertRefusedAsync(studio.AppConnectionString, $"truncate {table} cascade", PostgresErrorCodes.InsufficientPrivilege);
    }

    [Fact]
    public async Task History_UpdateDeleteTruncateByTheOwner_IsRefusedByTheTrigger()
    {
        await using var studio = await TestStudio.NewAsync();
        var add = $"insert into acts (request_id, command, subject, what, person_id, at) values ('{Guid.NewGuid()}', 'c', 's', 'w', '{studio.Ana.PersonId}', now())";
        await using (var connection = new NpgsqlConnection(studio.AppConnectionString))
        {
            await connection.OpenAsync();
            await using var command = new NpgsqlCommand(add, connection);
            Assert.Equal(1, await command.ExecuteNonQueryAsync());
        }

        await AssertRefusedAsync(studio.OwnerConnectionString, "update acts set what = 'other'", PostgresErrorCodes.RestrictViolation);
        await AssertRefusedAsync(studio.OwnerConnectionString, "delete from acts", PostgresErrorCodes.RestrictViolation);
        await AssertRefusedAsync(studio.OwnerConnectionString, "truncate acts", PostgresErrorCodes.RestrictViolation);
    }

    private static async Task AssertRefusedAsync(string connectionString, string sql, string state)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        var refused = await Assert.ThrowsAsync<PostgresException>(() => command.ExecuteNonQueryAsync());
        Assert.Equal(state, refused.SqlState);
    }
}
