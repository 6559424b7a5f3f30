using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace MakerStudio.Services.Schema.Migrations;

/// <summary>
/// History stays history whatever role writes: triggers refuse UPDATE, DELETE and TRUNCATE on append-only tables,
/// and a released formula version is frozen.
/// </summary>
[DbContext(typeof(StudioDb))]
[Migration("20261125235959_LedgerGuards")]
internal sealed class LedgerGuards : Migration
{
    private static readonly string[] AppendOnly = ["movements", "lot_events", "acts", "unit_movements"];

    protected override void Up(MigrationBuilder migrationBuilder)
    {
        migrationBuilder.Sql("""
            create function refuse_change() returns trigger language plpgsql as $$
            begin
              raise exception 'rows of % are never changed or removed; post a reversal', tg_table_name using errcode = 'restrict_violation';
            end $$;
            """);
        foreach (var table in AppendOnly)
        {
            migrationBuilder.Sql($"""
                create trigger {table}_append_only before update or delete on {table} for each row execute function refuse_change();
                create trigger {table}_no_truncate before truncate on {table} for each statement execute function refuse_change();
                """);
        }

        migrationBuilder.Sql("""
            create function refuse_frozen_version() returns trigger language plpgsql as $$
            begin
              if old.state = 'Released' and (tg_op = 'DELETE' or
                 (new.state, new.formula_id, new.number, new.method, new.cure_min_hours, new.cure_ideal_hours, new.cure_latest_hours,
                  new.tolerance_percent, new.expected_loss_percent, new.released_at) is distinct from
                 (old.state, old.formula_id, old.number, old.method, old.cure_min_hours, old.cure_ideal_hours, old.cure_latest_hours,
                  old.tolerance_percent, old.expected_loss_percent, old.released_at)) then
                raise exception 'version % is released and frozen', old.number using errcode = 'restrict_violation';
              end if;
              return coalesce(new, old);
            end $$;
            create trigger formula_versions_frozen before update or delete on formula_versions for each row execute function refuse_frozen_version();

            create function refuse_frozen_line() returns trigger language plpgsql as $$
            begin
              if exists (select 1 from formula_versions v where v.id = coalesce(new.formula_version_id, old.formula_version_id) and v.state = 'Released') then
                raise exception 'this line belongs to a released version and is frozen' using errcode = 'restrict_violation';
              end if;
              return coalesce(new, old);
            end $$;
            create trigger formula_lines_frozen before insert or update or delete on formula_lines for each row execute function refuse_frozen_line();
            """);
    }

    protected override void Down(MigrationBuilder migrationBuilder)
    {
        migrationBuilder.Sql("""
            drop trigger formula_lines_frozen on formula_lines;
            drop function refuse_frozen_line();
            drop trigger formula_versions_frozen on formula_versions;
            drop function refuse_frozen_version();
            """);
        foreach (var table in AppendOnly)
        {
            migrationBuilder.Sql($"drop trigger {table}_no_truncate on {table}; drop trigger {table}_append_only on {table};");
        }

        migrationBuilder.Sql("drop function refuse_change();");
    }
}
