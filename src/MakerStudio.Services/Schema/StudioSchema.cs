using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace MakerStudio.Services.Schema;

/// <summary>Brings a database to the present schema and gives the app's role no more than it needs.</summary>
public static class StudioSchema
{
    /// <summary>Tables whose rows are history: the app's role may add and read, nothing else.</summary>
    private static readonly string[] AppendOnly =
    [
        "movements", "lot_events", "acts", "unit_movements", "sales", "sale_lines", "dispatches", "placements", "placement_lines",
        "consignment_reports", "consignment_report_lines", "kit_lot_contents", "label_prints",
        "price_tags", "channel_terms", "margin_floors", "book_methods", "book_years", "write_downs", "batch_losses", "price_breaks",
        "purchase_orders", "purchase_order_lines", "order_closings",
    ];

    /// <param name="ownerConnectionString">A role that owns the schema.</param>
    /// <param name="appRole">The role the app signs in with; null or the owner itself when there is only one.</param>
    public static async Task MigrateAsync(string ownerConnectionString, string? appRole, CancellationToken cancel = default)
    {
        await using var db = new StudioDb(StudioDbOptions.For(ownerConnectionString));
        if (!await IsCurrentAsync(db, cancel))
        {
            await db.Database.MigrateAsync(cancel);
        }

        if (appRole is not null)
        {
            await GrantAsync(ownerConnectionString, appRole, cancel);
        }
    }

    /// <summary>Asks the history table directly: cheaper than building the migrator at every start.</summary>
    private static async Task<bool> IsCurrentAsync(StudioDb db, CancellationToken cancel)
    {
        try
        {
            var applied = await db.Database.SqlQuery<string>($"select migration_id as \"Value\" from \"__EFMigrationsHistory\"").ToListAsync(cancel);
            return db.Database.GetMigrations().All(applied.Contains);
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.UndefinedTable or PostgresErrorCodes.UndefinedColumn)
        {
            return false;
        }
    }

    private static async Task GrantAsync(string ownerConnectionString, string appRole, CancellationToken cancel)
    {
        await using var connection = new NpgsqlConnection(ownerConnectionString);
        await connection.OpenAsync(cancel);
        var owner = new NpgsqlConnectionStringBuilder(ownerConnectionString).Username;
        if (owner == appRole)
        {
            return;
        }

        var role = new NpgsqlCommandBuilder().QuoteIdentifier(appRole);
        var sql = $"""
            grant usage on schema public to {role};
            grant select, insert, update, delete on all tables in schema public to {role};
            grant usage, select on all sequences in schema public to {role};
            revoke update, delete, truncate on {string.Join(", ", AppendOnly)} from {role};
            """;
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(cancel);
    }
}
