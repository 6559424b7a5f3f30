using Microsoft.EntityFrameworkCore.Migrations;

namespace MakerStudio.Services.Schema.Migrations;

/// <summary>What the migration FinishedGoods does that no model says.</summary>
internal static class FinishedGoodsSql
{
    private static readonly string[] AppendOnly =
        ["sales", "sale_lines", "dispatches", "placements", "placement_lines", "consignment_reports", "consignment_report_lines", "kit_lot_contents"];

    /// <summary>The studio's own shelf, where all units filled so far have stood.</summary>
    public static void PutUnitsOnTheStudiosShelf(this MigrationBuilder migration) => migration.Sql($"""
        insert into places (id, name, kind, pays_broken) values ('{Place.StudioId}', 'Studio shelf', 'Studio', false);
        alter table unit_movements disable trigger unit_movements_append_only;
        update unit_movements set entry_id = request_id, place_id = '{Place.StudioId}',
          kind = case status when 'Rejected' then 'RejectedAtFilling' when 'Retained' then 'RetainedAtFilling' else 'Filled' end;
        alter table unit_movements enable trigger unit_movements_append_only;
        alter table unit_movements alter column entry_id drop default, alter column kind drop default, alter column place_id drop default;
        insert into unit_balances (batch_id, place_id, status, count)
          select batch_id, place_id, status, sum(change) from unit_movements group by batch_id, place_id, status;
        """);

    /// <summary>
    /// Balances follow the movements, whoever adds them. One statement is summed up at once: thousands of lines of one file
    /// touch a balance once.
    /// </summary>
    public static void GuardUnits(this MigrationBuilder migration)
    {
        migration.Sql("""
            create function add_up_units() returns trigger language plpgsql as $$
            begin
              insert into unit_balances (batch_id, place_id, status, count)
                select distinct batch_id, place_id, status, 0 from added on conflict do nothing;
              update unit_balances b set count = b.count + a.change
                from (select batch_id, place_id, status, sum(change)::int as change from added group by batch_id, place_id, status) a
                where (b.batch_id, b.place_id, b.status) = (a.batch_id, a.place_id, a.status);
              return null;
            end $$;
            create trigger unit_movements_add_up after insert on unit_movements
              referencing new table as added for each statement execute function add_up_units();
            """);
        foreach (var table in AppendOnly)
        {
            migration.Sql($"""
                create trigger {table}_append_only before update or delete on {table} for each row execute function refuse_change();
                create trigger {table}_no_truncate before truncate on {table} for each statement execute function refuse_change();
                """);
        }
    }

    public static void DropUnitGuards(this MigrationBuilder migration)
    {
        foreach (var table in AppendOnly)
        {
            migration.Sql($"drop trigger {table}_no_truncate on {table}; drop trigger {table}_append_only on {table};");
        }

        migration.Sql("drop trigger unit_movements_add_up on unit_movements; drop function add_up_units();");
    }
}
