using System;
using System.Collections.Generic;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "acts",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false),
                    command = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    subject = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    subject_id = table.Column<Guid>(type: "uuid", nullable: true),
                    what = table.Column<string>(type: "text", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_acts", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "code_counters",
                columns: table => new
                {
                    prefix = table.Column<string>(type: "character varying(8)", maxLength: 8, nullable: false),
                    last = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_code_counters", x => x.prefix);
                });

            migrationBuilder.CreateTable(
                name: "data_protection_keys",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    friendly_name = table.Column<string>(type: "text", nullable: true),
                    xml = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_data_protection_keys", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "drafts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    body = table.Column<string>(type: "jsonb", nullable: false),
                    kept_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kept_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_drafts", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "handled_requests",
                columns: table => new
                {
                    request_id = table.Column<Guid>(type: "uuid", nullable: false),
                    command = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    body_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    outcome = table.Column<string>(type: "jsonb", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_handled_requests", x => x.request_id);
                });

            migrationBuilder.CreateTable(
                name: "invitations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    purpose = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    token_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    role = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: true),
                    created_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    expires_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    used_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_invitations", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "materials",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    kind = table.Column<string>(type: "character varying(30)", maxLength: 30, nullable: false),
                    cas = table.Column<string>(type: "character varying(12)", maxLength: 12, nullable: true),
                    stocked_in = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    density = table.Column<decimal>(type: "numeric", nullable: true),
                    density_at_celsius = table.Column<decimal>(type: "numeric", nullable: true),
                    alcohol_value = table.Column<decimal>(type: "numeric", nullable: true),
                    alcohol_basis = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true),
                    flash_point_celsius = table.Column<decimal>(type: "numeric", nullable: true),
                    shelf_life_days = table.Column<int>(type: "integer", nullable: true),
                    life_after_opening_days = table.Column<int>(type: "integer", nullable: true),
                    reorder_point = table.Column<long>(type: "bigint", nullable: true),
                    drop_milligrams = table.Column<decimal>(type: "numeric", nullable: true),
                    notes = table.Column<string>(type: "text", nullable: true),
                    required_papers = table.Column<string[]>(type: "text[]", nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    archived_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_materials", x => x.id);
                    table.CheckConstraint("alcohol_never_bare", "(alcohol_value is null) = (alcohol_basis is null)");
                    table.CheckConstraint("density_sane", "density is null or (density > 0 and density < 25)");
                });

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    display_name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    initials = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: false),
                    role = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    joined_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    removed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    email_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    password_hash = table.Column<string>(type: "text", nullable: true),
                    security_stamp = table.Column<string>(type: "text", nullable: true),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: true),
                    phone_number = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    phone_number_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    two_factor_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    lockout_end = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    lockout_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    access_failed_count = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_people", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "scales",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    capacity_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    readability_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    retired_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_scales", x => x.id);
                    table.CheckConstraint("scale_sane", "readability_milligrams > 0 and capacity_milligrams > readability_milligrams");
                });

            migrationBuilder.CreateTable(
                name: "studio",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    address = table.Column<string>(type: "text", nullable: true),
                    phone = table.Column<string>(type: "text", nullable: true),
                    time_zone = table.Column<string>(type: "text", nullable: false),
                    culture = table.Column<string>(type: "text", nullable: false),
                    currency = table.Column<string>(type: "text", nullable: false),
                    labour_rate_per_hour = table.Column<decimal>(type: "numeric", nullable: false),
                    overhead_per_batch = table.Column<decimal>(type: "numeric", nullable: false),
                    overhead_per_unit = table.Column<decimal>(type: "numeric", nullable: false),
                    tolerance_percent = table.Column<decimal>(type: "numeric", nullable: false),
                    tolerance_divisions = table.Column<int>(type: "integer", nullable: false),
                    round_batch_up_to_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    is_sample = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_studio", x => x.id);
                    table.CheckConstraint("only_one_studio", "id = 1");
                });

            migrationBuilder.CreateTable(
                name: "suppliers",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    notes = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_suppliers", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "formulas",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    product_kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    makes_material_id = table.Column<Guid>(type: "uuid", nullable: true),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    archived_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_formulas", x => x.id);
                    table.ForeignKey(
                        name: "fk_formulas_materials_makes_material_id",
                        column: x => x.makes_material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "person_claims",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claim_type = table.Column<string>(type: "text", nullable: true),
                    claim_value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_person_claims", x => x.id);
                    table.ForeignKey(
                        name: "fk_person_claims_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "person_logins",
                columns: table => new
                {
                    login_provider = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    provider_key = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    provider_display_name = table.Column<string>(type: "text", nullable: true),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_person_logins", x => new { x.login_provider, x.provider_key });
                    table.ForeignKey(
                        name: "fk_person_logins_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "person_passkeys",
                columns: table => new
                {
                    credential_id = table.Column<byte[]>(type: "bytea", maxLength: 1024, nullable: false),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    data = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_person_passkeys", x => x.credential_id);
                    table.ForeignKey(
                        name: "fk_person_passkeys_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "person_tokens",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    login_provider = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    name = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_person_tokens", x => new { x.user_id, x.login_provider, x.name });
                    table.ForeignKey(
                        name: "fk_person_tokens_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "deliveries",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    supplier_id = table.Column<Guid>(type: "uuid", nullable: false),
                    invoice_number = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    received_on = table.Column<DateOnly>(type: "date", nullable: false),
                    freight = table.Column<decimal>(type: "numeric", nullable: false),
                    freight_basis = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    invoice_total = table.Column<decimal>(type: "numeric", nullable: true),
                    posted_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    posted_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_deliveries", x => x.id);
                    table.ForeignKey(
                        name: "fk_deliveries_suppliers_supplier_id",
                        column: x => x.supplier_id,
                        principalTable: "suppliers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "material_suppliers",
                columns: table => new
                {
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    supplier_id = table.Column<Guid>(type: "uuid", nullable: false),
                    supplier_code = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    lead_time_days = table.Column<int>(type: "integer", nullable: true),
                    pack_note = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_material_suppliers", x => new { x.material_id, x.supplier_id });
                    table.ForeignKey(
                        name: "fk_material_suppliers_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_material_suppliers_suppliers_supplier_id",
                        column: x => x.supplier_id,
                        principalTable: "suppliers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "formula_sizes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    formula_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    nominal_millilitres = table.Column<decimal>(type: "numeric", nullable: true),
                    nominal_milligrams = table.Column<long>(type: "bigint", nullable: true),
                    overfill_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    retired_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_formula_sizes", x => x.id);
                    table.CheckConstraint("one_nominal", "(nominal_millilitres is null) <> (nominal_milligrams is null)");
                    table.ForeignKey(
                        name: "fk_formula_sizes_formulas_formula_id",
                        column: x => x.formula_id,
                        principalTable: "formulas",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "formula_versions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    formula_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    state = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    why = table.Column<string>(type: "text", nullable: true),
                    method = table.Column<string>(type: "text", nullable: true),
                    cure_min_hours = table.Column<int>(type: "integer", nullable: false),
                    cure_ideal_hours = table.Column<int>(type: "integer", nullable: false),
                    cure_latest_hours = table.Column<int>(type: "integer", nullable: true),
                    tolerance_percent = table.Column<decimal>(type: "numeric", nullable: true),
                    expected_loss_percent = table.Column<decimal>(type: "numeric", nullable: false),
                    measured_density = table.Column<decimal>(type: "numeric", nullable: true),
                    created_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    kept_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    released_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    released_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_formula_versions", x => x.id);
                    table.CheckConstraint("cure_window_ordered", "cure_min_hours >= 0 and cure_ideal_hours >= cure_min_hours");
                    table.ForeignKey(
                        name: "fk_formula_versions_formulas_formula_id",
                        column: x => x.formula_id,
                        principalTable: "formulas",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "delivery_lines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    delivery_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    quantity_typed = table.Column<decimal>(type: "numeric", nullable: false),
                    unit = table.Column<string>(type: "character varying(30)", maxLength: 30, nullable: false),
                    quantity = table.Column<long>(type: "bigint", nullable: false),
                    density_used = table.Column<decimal>(type: "numeric", nullable: true),
                    price = table.Column<decimal>(type: "numeric", nullable: false),
                    gross_kilograms = table.Column<decimal>(type: "numeric", nullable: true),
                    duty = table.Column<decimal>(type: "numeric", nullable: false),
                    surcharge = table.Column<decimal>(type: "numeric", nullable: false),
                    discount = table.Column<decimal>(type: "numeric", nullable: false),
                    freight_share = table.Column<decimal>(type: "numeric", nullable: false),
                    landed_total = table.Column<decimal>(type: "numeric", nullable: false),
                    unit_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    price_answer = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_delivery_lines", x => x.id);
                    table.CheckConstraint("delivery_quantity_positive", "quantity > 0");
                    table.ForeignKey(
                        name: "fk_delivery_lines_deliveries_delivery_id",
                        column: x => x.delivery_id,
                        principalTable: "deliveries",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_delivery_lines_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "formula_size_parts",
                columns: table => new
                {
                    formula_size_id = table.Column<Guid>(type: "uuid", nullable: false),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    count_per_unit = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_formula_size_parts", x => new { x.formula_size_id, x.material_id });
                    table.CheckConstraint("count_positive", "count_per_unit > 0");
                    table.ForeignKey(
                        name: "fk_formula_size_parts_formula_sizes_formula_size_id",
                        column: x => x.formula_size_id,
                        principalTable: "formula_sizes",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_formula_size_parts_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "batches",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    formula_version_id = table.Column<Guid>(type: "uuid", nullable: false),
                    scent_name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    version_number = table.Column<int>(type: "integer", nullable: false),
                    product_kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    method = table.Column<string>(type: "text", nullable: true),
                    cure_min_hours = table.Column<int>(type: "integer", nullable: false),
                    cure_ideal_hours = table.Column<int>(type: "integer", nullable: false),
                    cure_latest_hours = table.Column<int>(type: "integer", nullable: true),
                    tolerance_percent = table.Column<decimal>(type: "numeric", nullable: false),
                    tolerance_divisions = table.Column<int>(type: "integer", nullable: false),
                    expected_loss_percent = table.Column<decimal>(type: "numeric", nullable: false),
                    density_used = table.Column<decimal>(type: "numeric", nullable: true),
                    state = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    target_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    planned_units = table.Column<int>(type: "integer", nullable: true),
                    size_name = table.Column<string>(type: "text", nullable: true),
                    nominal_millilitres = table.Column<decimal>(type: "numeric", nullable: true),
                    nominal_milligrams = table.Column<long>(type: "bigint", nullable: true),
                    fill_milligrams = table.Column<long>(type: "bigint", nullable: true),
                    scale_id = table.Column<Guid>(type: "uuid", nullable: true),
                    readability_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    room_celsius = table.Column<decimal>(type: "numeric", nullable: true),
                    place = table.Column<string>(type: "text", nullable: true),
                    note = table.Column<string>(type: "text", nullable: true),
                    planned_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    planned_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    weighing_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    weighing_since = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    clock_started_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    clock_started_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    ready_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    ready_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    early_reason = table.Column<string>(type: "text", nullable: true),
                    held_reason = table.Column<string>(type: "text", nullable: true),
                    filled_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    closed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    discarded_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    discard_reason = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_batches", x => x.id);
                    table.CheckConstraint("batch_target_positive", "target_milligrams > 0");
                    table.CheckConstraint("resting_has_clock", "state not in ('Resting', 'Ready', 'Filled', 'Closed') or clock_started_at is not null");
                    table.ForeignKey(
                        name: "fk_batches_formula_versions_formula_version_id",
                        column: x => x.formula_version_id,
                        principalTable: "formula_versions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_batches_scales_scale_id",
                        column: x => x.scale_id,
                        principalTable: "scales",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "formula_lines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    formula_version_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    amount = table.Column<decimal>(type: "numeric", nullable: true),
                    basis = table.Column<string>(type: "character varying(30)", maxLength: 30, nullable: false),
                    method = table.Column<string>(type: "text", nullable: true),
                    fraction = table.Column<decimal>(type: "numeric", nullable: true),
                    density_used = table.Column<decimal>(type: "numeric", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_formula_lines", x => x.id);
                    table.ForeignKey(
                        name: "fk_formula_lines_formula_versions_formula_version_id",
                        column: x => x.formula_version_id,
                        principalTable: "formula_versions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_formula_lines_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "batch_lines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    material_name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    fraction = table.Column<decimal>(type: "numeric", nullable: false),
                    planned_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    target_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    method = table.Column<string>(type: "text", nullable: true),
                    density_used = table.Column<decimal>(type: "numeric", nullable: true),
                    done_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_batch_lines", x => x.id);
                    table.CheckConstraint("line_target_positive", "target_milligrams > 0");
                    table.ForeignKey(
                        name: "fk_batch_lines_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_batch_lines_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "batch_parts",
                columns: table => new
                {
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    count_per_unit = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_batch_parts", x => new { x.batch_id, x.material_id });
                    table.ForeignKey(
                        name: "fk_batch_parts_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_batch_parts_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "cure_checks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    strength = table.Column<int>(type: "integer", nullable: false),
                    character = table.Column<string>(type: "text", nullable: true),
                    clarity = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    verdict = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_cure_checks", x => x.id);
                    table.CheckConstraint("strength_0_to_5", "strength between 0 and 5");
                    table.ForeignKey(
                        name: "fk_cure_checks_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "deviations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_line_id = table.Column<Guid>(type: "uuid", nullable: true),
                    choice = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    what = table.Column<string>(type: "text", nullable: false),
                    factor = table.Column<decimal>(type: "numeric", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_deviations", x => x.id);
                    table.ForeignKey(
                        name: "fk_deviations_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "fills",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    to_filling_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    fill_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    filled = table.Column<int>(type: "integer", nullable: false),
                    rejected = table.Column<int>(type: "integer", nullable: false),
                    retained = table.Column<int>(type: "integer", nullable: false),
                    check_weights = table.Column<List<long>>(type: "bigint[]", nullable: false),
                    labour_minutes = table.Column<decimal>(type: "numeric", nullable: false),
                    labour_rate_per_hour = table.Column<decimal>(type: "numeric", nullable: false),
                    overhead_per_batch = table.Column<decimal>(type: "numeric", nullable: false),
                    overhead_per_unit = table.Column<decimal>(type: "numeric", nullable: false),
                    materials_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    packaging_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    labour_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    overhead_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    total_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_fills", x => x.id);
                    table.CheckConstraint("fill_counts_sane", "filled >= 0 and rejected >= 0 and retained >= 0 and rejected + retained <= filled");
                    table.ForeignKey(
                        name: "fk_fills_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "lots",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    supplier_id = table.Column<Guid>(type: "uuid", nullable: true),
                    delivery_line_id = table.Column<Guid>(type: "uuid", nullable: true),
                    made_by_batch_id = table.Column<Guid>(type: "uuid", nullable: true),
                    supplier_lot = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    received_on = table.Column<DateOnly>(type: "date", nullable: false),
                    opened_on = table.Column<DateOnly>(type: "date", nullable: true),
                    expires_on = table.Column<DateOnly>(type: "date", nullable: true),
                    retest_on = table.Column<DateOnly>(type: "date", nullable: true),
                    status = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    status_reason = table.Column<string>(type: "text", nullable: true),
                    density = table.Column<decimal>(type: "numeric", nullable: true),
                    unit_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    tare_milligrams = table.Column<long>(type: "bigint", nullable: true),
                    shelf = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_lots", x => x.id);
                    table.ForeignKey(
                        name: "fk_lots_batches_made_by_batch_id",
                        column: x => x.made_by_batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_lots_delivery_lines_delivery_line_id",
                        column: x => x.delivery_line_id,
                        principalTable: "delivery_lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_lots_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_lots_suppliers_supplier_id",
                        column: x => x.supplier_id,
                        principalTable: "suppliers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "unit_movements",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    status = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    change = table.Column<int>(type: "integer", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_unit_movements", x => x.id);
                    table.CheckConstraint("unit_movement_not_zero", "change <> 0");
                    table.ForeignKey(
                        name: "fk_unit_movements_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "lot_balances",
                columns: table => new
                {
                    lot_id = table.Column<Guid>(type: "uuid", nullable: false),
                    on_hand = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_lot_balances", x => x.lot_id);
                    table.CheckConstraint("on_hand_never_negative", "on_hand >= 0");
                    table.ForeignKey(
                        name: "fk_lot_balances_lots_lot_id",
                        column: x => x.lot_id,
                        principalTable: "lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "lot_events",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    what = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: true),
                    old_date = table.Column<DateOnly>(type: "date", nullable: true),
                    new_date = table.Column<DateOnly>(type: "date", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_lot_events", x => x.id);
                    table.ForeignKey(
                        name: "fk_lot_events_lots_lot_id",
                        column: x => x.lot_id,
                        principalTable: "lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "movements",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    reason = table.Column<string>(type: "character varying(30)", maxLength: 30, nullable: true),
                    change = table.Column<long>(type: "bigint", nullable: false),
                    on_hand_after = table.Column<long>(type: "bigint", nullable: false),
                    unit_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    delivery_id = table.Column<Guid>(type: "uuid", nullable: true),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: true),
                    weighing_id = table.Column<Guid>(type: "uuid", nullable: true),
                    fill_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reverses_id = table.Column<long>(type: "bigint", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_movements", x => x.id);
                    table.CheckConstraint("movement_after_never_negative", "on_hand_after >= 0");
                    table.CheckConstraint("movement_not_zero", "change <> 0");
                    table.ForeignKey(
                        name: "fk_movements_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_movements_deliveries_delivery_id",
                        column: x => x.delivery_id,
                        principalTable: "deliveries",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_movements_lots_lot_id",
                        column: x => x.lot_id,
                        principalTable: "lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_movements_movements_reverses_id",
                        column: x => x.reverses_id,
                        principalTable: "movements",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "papers",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    kind = table.Column<string>(type: "character varying(30)", maxLength: 30, nullable: false),
                    edition = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    edition_date = table.Column<DateOnly>(type: "date", nullable: true),
                    file_name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    content_type = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    content = table.Column<byte[]>(type: "bytea", nullable: false),
                    size = table.Column<long>(type: "bigint", nullable: false),
                    added_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    added_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_papers", x => x.id);
                    table.ForeignKey(
                        name: "fk_papers_lots_lot_id",
                        column: x => x.lot_id,
                        principalTable: "lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_papers_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "weighings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_line_id = table.Column<Guid>(type: "uuid", nullable: false),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    net_milligrams = table.Column<long>(type: "bigint", nullable: false),
                    tare_milligrams = table.Column<long>(type: "bigint", nullable: true),
                    unit_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false),
                    reversed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    reversed_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reversed_reason = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_weighings", x => x.id);
                    table.CheckConstraint("weighing_positive", "net_milligrams > 0");
                    table.ForeignKey(
                        name: "fk_weighings_batch_lines_batch_line_id",
                        column: x => x.batch_line_id,
                        principalTable: "batch_lines",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_weighings_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_weighings_lots_lot_id",
                        column: x => x.lot_id,
                        principalTable: "lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "pending_receipts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    weighing_id = table.Column<Guid>(type: "uuid", nullable: false),
                    milligrams = table.Column<long>(type: "bigint", nullable: false),
                    estimated_unit_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    matched_lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    matched_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_pending_receipts", x => x.id);
                    table.CheckConstraint("pending_positive", "milligrams > 0");
                    table.ForeignKey(
                        name: "fk_pending_receipts_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_pending_receipts_lots_matched_lot_id",
                        column: x => x.matched_lot_id,
                        principalTable: "lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_pending_receipts_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_pending_receipts_weighings_weighing_id",
                        column: x => x.weighing_id,
                        principalTable: "weighings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_acts_at",
                table: "acts",
                column: "at");

            migrationBuilder.CreateIndex(
                name: "ix_acts_subject_subject_id_id",
                table: "acts",
                columns: new[] { "subject", "subject_id", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_batch_lines_batch_id_position",
                table: "batch_lines",
                columns: new[] { "batch_id", "position" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_batch_lines_material_id",
                table: "batch_lines",
                column: "material_id");

            migrationBuilder.CreateIndex(
                name: "ix_batch_parts_material_id",
                table: "batch_parts",
                column: "material_id");

            migrationBuilder.CreateIndex(
                name: "ix_batches_code",
                table: "batches",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_batches_formula_version_id",
                table: "batches",
                column: "formula_version_id");

            migrationBuilder.CreateIndex(
                name: "ix_batches_scale_id",
                table: "batches",
                column: "scale_id");

            migrationBuilder.CreateIndex(
                name: "ix_batches_state",
                table: "batches",
                column: "state");

            migrationBuilder.CreateIndex(
                name: "ix_cure_checks_batch_id_at",
                table: "cure_checks",
                columns: new[] { "batch_id", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_deliveries_code",
                table: "deliveries",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_deliveries_supplier_id",
                table: "deliveries",
                column: "supplier_id");

            migrationBuilder.CreateIndex(
                name: "ix_delivery_lines_delivery_id",
                table: "delivery_lines",
                column: "delivery_id");

            migrationBuilder.CreateIndex(
                name: "ix_delivery_lines_material_id",
                table: "delivery_lines",
                column: "material_id");

            migrationBuilder.CreateIndex(
                name: "ix_deviations_batch_id",
                table: "deviations",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_drafts_kind_kept_at",
                table: "drafts",
                columns: new[] { "kind", "kept_at" });

            migrationBuilder.CreateIndex(
                name: "ix_fills_batch_id",
                table: "fills",
                column: "batch_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_formula_lines_formula_version_id",
                table: "formula_lines",
                column: "formula_version_id");

            migrationBuilder.CreateIndex(
                name: "ix_formula_lines_material_id",
                table: "formula_lines",
                column: "material_id");

            migrationBuilder.CreateIndex(
                name: "ix_formula_size_parts_material_id",
                table: "formula_size_parts",
                column: "material_id");

            migrationBuilder.CreateIndex(
                name: "ix_formula_sizes_formula_id",
                table: "formula_sizes",
                column: "formula_id");

            migrationBuilder.CreateIndex(
                name: "ix_formula_versions_formula_id_number",
                table: "formula_versions",
                columns: new[] { "formula_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_one_draft_a_formula",
                table: "formula_versions",
                column: "formula_id",
                unique: true,
                filter: "state = 'Draft'");

            migrationBuilder.CreateIndex(
                name: "ix_formulas_makes_material_id",
                table: "formulas",
                column: "makes_material_id");

            migrationBuilder.CreateIndex(
                name: "ix_handled_requests_at",
                table: "handled_requests",
                column: "at");

            migrationBuilder.CreateIndex(
                name: "ix_invitations_token_hash",
                table: "invitations",
                column: "token_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_lot_events_lot_id_id",
                table: "lot_events",
                columns: new[] { "lot_id", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_lots_code",
                table: "lots",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_lots_delivery_line_id",
                table: "lots",
                column: "delivery_line_id");

            migrationBuilder.CreateIndex(
                name: "ix_lots_made_by_batch_id",
                table: "lots",
                column: "made_by_batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_lots_material_id",
                table: "lots",
                column: "material_id");

            migrationBuilder.CreateIndex(
                name: "ix_lots_supplier_id",
                table: "lots",
                column: "supplier_id");

            migrationBuilder.CreateIndex(
                name: "ix_material_suppliers_supplier_id",
                table: "material_suppliers",
                column: "supplier_id");

            migrationBuilder.CreateIndex(
                name: "ix_materials_name",
                table: "materials",
                column: "name");

            migrationBuilder.CreateIndex(
                name: "ix_movements_at",
                table: "movements",
                column: "at");

            migrationBuilder.CreateIndex(
                name: "ix_movements_batch_id",
                table: "movements",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_movements_delivery_id",
                table: "movements",
                column: "delivery_id");

            migrationBuilder.CreateIndex(
                name: "ix_movements_lot_id_id",
                table: "movements",
                columns: new[] { "lot_id", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_movements_reverses_id",
                table: "movements",
                column: "reverses_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_papers_lot_id",
                table: "papers",
                column: "lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_papers_material_id",
                table: "papers",
                column: "material_id");

            migrationBuilder.CreateIndex(
                name: "ix_pending_receipts_batch_id",
                table: "pending_receipts",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_pending_receipts_matched_lot_id",
                table: "pending_receipts",
                column: "matched_lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_pending_receipts_material_id",
                table: "pending_receipts",
                column: "material_id",
                filter: "matched_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_pending_receipts_weighing_id",
                table: "pending_receipts",
                column: "weighing_id");

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                table: "people",
                column: "normalized_email");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                table: "people",
                column: "normalized_user_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_person_claims_user_id",
                table: "person_claims",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_person_logins_user_id",
                table: "person_logins",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_person_passkeys_user_id",
                table: "person_passkeys",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_suppliers_name",
                table: "suppliers",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_unit_movements_batch_id",
                table: "unit_movements",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_weighings_batch_id",
                table: "weighings",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_weighings_batch_line_id",
                table: "weighings",
                column: "batch_line_id");

            migrationBuilder.CreateIndex(
                name: "ix_weighings_lot_id",
                table: "weighings",
                column: "lot_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "acts");

            migrationBuilder.DropTable(
                name: "batch_parts");

            migrationBuilder.DropTable(
                name: "code_counters");

            migrationBuilder.DropTable(
                name: "cure_checks");

            migrationBuilder.DropTable(
                name: "data_protection_keys");

            migrationBuilder.DropTable(
                name: "deviations");

            migrationBuilder.DropTable(
                name: "drafts");

            migrationBuilder.DropTable(
                name: "fills");

            migrationBuilder.DropTable(
                name: "formula_lines");

            migrationBuilder.DropTable(
                name: "formula_size_parts");

            migrationBuilder.DropTable(
                name: "handled_requests");

            migrationBuilder.DropTable(
                name: "invitations");

            migrationBuilder.DropTable(
                name: "lot_balances");

            migrationBuilder.DropTable(
                name: "lot_events");

            migrationBuilder.DropTable(
                name: "material_suppliers");

            migrationBuilder.DropTable(
                name: "movements");

            migrationBuilder.DropTable(
                name: "papers");

            migrationBuilder.DropTable(
                name: "pending_receipts");

            migrationBuilder.DropTable(
                name: "person_claims");

            migrationBuilder.DropTable(
                name: "person_logins");

            migrationBuilder.DropTable(
                name: "person_passkeys");

            migrationBuilder.DropTable(
                name: "person_tokens");

            migrationBuilder.DropTable(
                name: "studio");

            migrationBuilder.DropTable(
                name: "unit_movements");

            migrationBuilder.DropTable(
                name: "formula_sizes");

            migrationBuilder.DropTable(
                name: "weighings");

            migrationBuilder.DropTable(
                name: "people");

            migrationBuilder.DropTable(
                name: "batch_lines");

            migrationBuilder.DropTable(
                name: "lots");

            migrationBuilder.DropTable(
                name: "batches");

            migrationBuilder.DropTable(
                name: "delivery_lines");

            migrationBuilder.DropTable(
                name: "formula_versions");

            migrationBuilder.DropTable(
                name: "scales");

            migrationBuilder.DropTable(
                name: "deliveries");

            migrationBuilder.DropTable(
                name: "formulas");

            migrationBuilder.DropTable(
                name: "suppliers");

            migrationBuilder.DropTable(
                name: "materials");
        }
    }
}
