using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Catalogue.Data.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterDatabase()
                .Annotation("Npgsql:PostgresExtension:pg_trgm", ",,");

            migrationBuilder.CreateTable(
                name: "accounts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    display_name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
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
                    table.PrimaryKey("pk_accounts", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "api_tokens",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    token_hash = table.Column<string>(type: "text", nullable: false),
                    scope = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    revoked_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_api_tokens", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "audit_entries",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityAlwaysColumn),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    who = table.Column<string>(type: "text", nullable: false),
                    action = table.Column<string>(type: "text", nullable: false),
                    teardown_id = table.Column<Guid>(type: "uuid", nullable: true),
                    record_id = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_audit_entries", x => x.id);
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
                name: "families",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    match_key = table.Column<string>(type: "text", nullable: false),
                    search_key = table.Column<string>(type: "text", nullable: false),
                    slug = table.Column<string>(type: "text", nullable: false),
                    function_class = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    datasheet_url = table.Column<string>(type: "text", nullable: true),
                    merged_into_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_families", x => x.id);
                    table.ForeignKey(
                        name: "fk_families_families_merged_into_id",
                        column: x => x.merged_into_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "jobs",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityAlwaysColumn),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    subject = table.Column<string>(type: "text", nullable: false),
                    attempts = table.Column<int>(type: "integer", nullable: false),
                    not_before = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    leased_until = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    done_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    failure = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_jobs", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "lab_settings",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    lab_name = table.Column<string>(type: "text", nullable: false),
                    public_base_address = table.Column<string>(type: "text", nullable: true),
                    content_licence = table.Column<string>(type: "text", nullable: true),
                    contact = table.Column<string>(type: "text", nullable: true),
                    requires_approval = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_lab_settings", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "makers",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    name_key = table.Column<string>(type: "text", nullable: false),
                    slug = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_makers", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "media_files",
                columns: table => new
                {
                    sha256 = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    kind = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    bytes = table.Column<long>(type: "bigint", nullable: false),
                    width_pixels = table.Column<int>(type: "integer", nullable: false),
                    height_pixels = table.Column<int>(type: "integer", nullable: false),
                    received_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_media_files", x => x.sha256);
                });

            migrationBuilder.CreateTable(
                name: "roles",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_roles", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "site_state",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    site_version = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_site_state", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "account_claims",
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
                    table.PrimaryKey("pk_account_claims", x => x.id);
                    table.ForeignKey(
                        name: "fk_account_claims_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_logins",
                columns: table => new
                {
                    login_provider = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    provider_key = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    provider_display_name = table.Column<string>(type: "text", nullable: true),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_logins", x => new { x.login_provider, x.provider_key });
                    table.ForeignKey(
                        name: "fk_account_logins_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_passkeys",
                columns: table => new
                {
                    credential_id = table.Column<byte[]>(type: "bytea", maxLength: 1024, nullable: false),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    data = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_passkeys", x => x.credential_id);
                    table.ForeignKey(
                        name: "fk_account_passkeys_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_tokens",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    login_provider = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    name = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_tokens", x => new { x.user_id, x.login_provider, x.name });
                    table.ForeignKey(
                        name: "fk_account_tokens_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "one_time_sign_ins",
                columns: table => new
                {
                    code_hash = table.Column<string>(type: "text", nullable: false),
                    account_id = table.Column<Guid>(type: "uuid", nullable: false),
                    expires_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    used_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_one_time_sign_ins", x => x.code_hash);
                    table.ForeignKey(
                        name: "fk_one_time_sign_ins_accounts_account_id",
                        column: x => x.account_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "family_aliases",
                columns: table => new
                {
                    family_id = table.Column<Guid>(type: "uuid", nullable: false),
                    match_key = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_family_aliases", x => new { x.family_id, x.match_key });
                    table.ForeignKey(
                        name: "fk_family_aliases_families_family_id",
                        column: x => x.family_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "family_makers",
                columns: table => new
                {
                    family_id = table.Column<Guid>(type: "uuid", nullable: false),
                    maker_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_family_makers", x => new { x.family_id, x.maker_id });
                    table.ForeignKey(
                        name: "fk_family_makers_families_family_id",
                        column: x => x.family_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_family_makers_makers_maker_id",
                        column: x => x.maker_id,
                        principalTable: "makers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "maker_aliases",
                columns: table => new
                {
                    maker_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name_key = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_maker_aliases", x => new { x.maker_id, x.name_key });
                    table.ForeignKey(
                        name: "fk_maker_aliases_makers_maker_id",
                        column: x => x.maker_id,
                        principalTable: "makers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "products",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    brand_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    model = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    category = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    identity_key = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_products", x => x.id);
                    table.ForeignKey(
                        name: "fk_products_makers_brand_id",
                        column: x => x.brand_id,
                        principalTable: "makers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "renditions",
                columns: table => new
                {
                    sha256 = table.Column<string>(type: "character varying(64)", nullable: false),
                    width_pixels = table.Column<int>(type: "integer", nullable: false),
                    height_pixels = table.Column<int>(type: "integer", nullable: false),
                    store_name = table.Column<string>(type: "text", nullable: false),
                    content_sha256 = table.Column<string>(type: "text", nullable: false),
                    bytes = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_renditions", x => new { x.sha256, x.width_pixels });
                    table.ForeignKey(
                        name: "fk_renditions_media_files_sha256",
                        column: x => x.sha256,
                        principalTable: "media_files",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "account_roles",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    role_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_roles", x => new { x.user_id, x.role_id });
                    table.ForeignKey(
                        name: "fk_account_roles_accounts_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_account_roles_roles_role_id",
                        column: x => x.role_id,
                        principalTable: "roles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "role_claims",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    role_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claim_type = table.Column<string>(type: "text", nullable: true),
                    claim_value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_role_claims", x => x.id);
                    table.ForeignKey(
                        name: "fk_role_claims_roles_role_id",
                        column: x => x.role_id,
                        principalTable: "roles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "teardowns",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    product_id = table.Column<Guid>(type: "uuid", nullable: false),
                    slug = table.Column<string>(type: "character varying(96)", maxLength: 96, nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityAlwaysColumn),
                    serial_number = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_teardowns", x => x.id);
                    table.ForeignKey(
                        name: "fk_teardowns_products_product_id",
                        column: x => x.product_id,
                        principalTable: "products",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "revisions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    teardown_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    title = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    standfirst = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    brand = table.Column<string>(type: "text", nullable: false),
                    product_name = table.Column<string>(type: "text", nullable: false),
                    model = table.Column<string>(type: "text", nullable: false),
                    category = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    year = table.Column<int>(type: "integer", nullable: true),
                    mass_kg = table.Column<double>(type: "double precision", nullable: true),
                    taken_apart_on = table.Column<DateOnly>(type: "date", nullable: true),
                    taken_apart_by = table.Column<string>(type: "text", nullable: true),
                    obtained = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    obtained_note = table.Column<string>(type: "text", nullable: true),
                    condition = table.Column<string>(type: "text", nullable: true),
                    firmware = table.Column<string>(type: "text", nullable: true),
                    cell_chemistry = table.Column<string>(type: "text", nullable: true),
                    method_markdown = table.Column<string>(type: "text", nullable: true),
                    submitted_by = table.Column<string>(type: "text", nullable: true),
                    opened_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    published_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_revisions", x => x.id);
                    table.ForeignKey(
                        name: "fk_revisions_teardowns_teardown_id",
                        column: x => x.teardown_id,
                        principalTable: "teardowns",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "bench_tests",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    subject = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    conditions = table.Column<string>(type: "text", nullable: true),
                    instrument = table.Column<string>(type: "text", nullable: true),
                    calibrated_on = table.Column<DateOnly>(type: "date", nullable: true),
                    ambient_deg_c = table.Column<double>(type: "double precision", nullable: true),
                    cable = table.Column<string>(type: "text", nullable: true),
                    low = table.Column<double>(type: "double precision", nullable: true),
                    value = table.Column<double>(type: "double precision", nullable: true),
                    high = table.Column<double>(type: "double precision", nullable: true),
                    unit = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: true),
                    result_text = table.Column<string>(type: "text", nullable: true),
                    taken_on = table.Column<DateOnly>(type: "date", nullable: true),
                    port_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_bench_tests", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_bench_tests_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "boards",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    parent_id = table.Column<Guid>(type: "uuid", nullable: true),
                    position = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    topology = table.Column<string[]>(type: "text[]", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_boards", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_boards_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "claims",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    subject = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    as_printed = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<double>(type: "double precision", nullable: true),
                    unit = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: true),
                    place = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    port_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_claims", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_claims_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "findings",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    heading = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    markdown = table.Column<string>(type: "text", nullable: false),
                    component_ids = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    photo_ids = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    test_ids = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_findings", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_findings_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "photos",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    sha256 = table.Column<string>(type: "character varying(64)", nullable: false),
                    width_pixels = table.Column<int>(type: "integer", nullable: false),
                    height_pixels = table.Column<int>(type: "integer", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    subject = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    board_id = table.Column<Guid>(type: "uuid", nullable: true),
                    caption = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    alt_text = table.Column<string>(type: "text", nullable: true),
                    credit = table.Column<string>(type: "text", nullable: true),
                    licence = table.Column<string>(type: "text", nullable: true),
                    is_drawing = table.Column<bool>(type: "boolean", nullable: false),
                    file_name = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_photos", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_photos_media_files_sha256",
                        column: x => x.sha256,
                        principalTable: "media_files",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_photos_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ports",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    kind = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    direction = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    quantity = table.Column<int>(type: "integer", nullable: false),
                    as_printed = table.Column<string>(type: "text", nullable: true),
                    protocols = table.Column<string[]>(type: "text[]", nullable: false),
                    capability_words = table.Column<string[]>(type: "text[]", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ports", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_ports_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "publications",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    teardown_id = table.Column<Guid>(type: "uuid", nullable: false),
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    note = table.Column<string>(type: "text", nullable: false),
                    published_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    published_by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_publications", x => x.id);
                    table.ForeignKey(
                        name: "fk_publications_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_publications_teardowns_teardown_id",
                        column: x => x.teardown_id,
                        principalTable: "teardowns",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "rails",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_rails", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_rails_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "steps",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    heading = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    markdown = table.Column<string>(type: "text", nullable: true),
                    photo_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_steps", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_steps_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "components",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    board_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    role = table.Column<string>(type: "text", nullable: true),
                    function_class = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    designators = table.Column<string>(type: "text", nullable: true),
                    designator_list = table.Column<string[]>(type: "text[]", nullable: false),
                    marking_as_read = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    part_number = table.Column<string>(type: "text", nullable: true),
                    value = table.Column<string>(type: "text", nullable: true),
                    package = table.Column<string>(type: "text", nullable: true),
                    maker_as_read = table.Column<string>(type: "text", nullable: true),
                    description = table.Column<string>(type: "text", nullable: true),
                    quantity = table.Column<int>(type: "integer", nullable: true),
                    parallel_count = table.Column<int>(type: "integer", nullable: false),
                    series_count = table.Column<int>(type: "integer", nullable: false),
                    is_fitted = table.Column<bool>(type: "boolean", nullable: false),
                    family_id = table.Column<Guid>(type: "uuid", nullable: true),
                    family_evidence = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    rail_id = table.Column<Guid>(type: "uuid", nullable: true),
                    note = table.Column<string>(type: "text", nullable: true),
                    imported_row = table.Column<string>(type: "jsonb", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_components", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_components_boards_revision_id_board_id",
                        columns: x => new { x.revision_id, x.board_id },
                        principalTable: "boards",
                        principalColumns: new[] { "revision_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_components_families_family_id",
                        column: x => x.family_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_components_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "callouts",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    photo_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    shape = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    x = table.Column<double>(type: "double precision", nullable: false),
                    y = table.Column<double>(type: "double precision", nullable: false),
                    width = table.Column<double>(type: "double precision", nullable: true),
                    height = table.Column<double>(type: "double precision", nullable: true),
                    corners = table.Column<double[]>(type: "double precision[]", nullable: false),
                    component_id = table.Column<Guid>(type: "uuid", nullable: true),
                    board_id = table.Column<Guid>(type: "uuid", nullable: true),
                    port_id = table.Column<Guid>(type: "uuid", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_callouts", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_callouts_photos_revision_id_photo_id",
                        columns: x => new { x.revision_id, x.photo_id },
                        principalTable: "photos",
                        principalColumns: new[] { "revision_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_callouts_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "rail_quantities",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    rail_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    low = table.Column<double>(type: "double precision", nullable: false),
                    nominal = table.Column<double>(type: "double precision", nullable: false),
                    high = table.Column<double>(type: "double precision", nullable: false),
                    evidence = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    source = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_rail_quantities", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_rail_quantities_rails_revision_id_rail_id",
                        columns: x => new { x.revision_id, x.rail_id },
                        principalTable: "rails",
                        principalColumns: new[] { "revision_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_rail_quantities_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "current_figures",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    component_id = table.Column<Guid>(type: "uuid", nullable: false),
                    rule = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    teardown_id = table.Column<Guid>(type: "uuid", nullable: false),
                    rule_version = table.Column<int>(type: "integer", nullable: false),
                    low = table.Column<double>(type: "double precision", nullable: true),
                    nominal = table.Column<double>(type: "double precision", nullable: true),
                    high = table.Column<double>(type: "double precision", nullable: true),
                    unit = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    verdict = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    static_only = table.Column<bool>(type: "boolean", nullable: false),
                    missing = table.Column<string>(type: "jsonb", nullable: false),
                    working = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_current_figures", x => new { x.revision_id, x.component_id, x.rule });
                    table.ForeignKey(
                        name: "fk_current_figures_components_revision_id_component_id",
                        columns: x => new { x.revision_id, x.component_id },
                        principalTable: "components",
                        principalColumns: new[] { "revision_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_current_figures_teardowns_teardown_id",
                        column: x => x.teardown_id,
                        principalTable: "teardowns",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "figures",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    rule = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    rule_version = table.Column<int>(type: "integer", nullable: false),
                    component_id = table.Column<Guid>(type: "uuid", nullable: false),
                    low = table.Column<double>(type: "double precision", nullable: true),
                    nominal = table.Column<double>(type: "double precision", nullable: true),
                    high = table.Column<double>(type: "double precision", nullable: true),
                    unit = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    verdict = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    static_only = table.Column<bool>(type: "boolean", nullable: false),
                    missing = table.Column<string>(type: "jsonb", nullable: false),
                    working = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_figures", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_figures_components_revision_id_component_id",
                        columns: x => new { x.revision_id, x.component_id },
                        principalTable: "components",
                        principalColumns: new[] { "revision_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_figures_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ratings",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    component_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    low = table.Column<double>(type: "double precision", nullable: false),
                    nominal = table.Column<double>(type: "double precision", nullable: false),
                    high = table.Column<double>(type: "double precision", nullable: false),
                    condition = table.Column<string>(type: "text", nullable: true),
                    evidence = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    source = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ratings", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_ratings_components_revision_id_component_id",
                        columns: x => new { x.revision_id, x.component_id },
                        principalTable: "components",
                        principalColumns: new[] { "revision_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_ratings_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.InsertData(
                table: "lab_settings",
                columns: new[] { "id", "contact", "content_licence", "lab_name", "public_base_address", "requires_approval" },
                values: new object[] { 1, null, null, "Teardown catalogue", null, false });

            migrationBuilder.InsertData(
                table: "site_state",
                columns: new[] { "id", "site_version" },
                values: new object[] { 1, 1L });

            migrationBuilder.CreateIndex(
                name: "ix_account_claims_user_id",
                table: "account_claims",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_account_logins_user_id",
                table: "account_logins",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_account_passkeys_user_id",
                table: "account_passkeys",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_account_roles_role_id",
                table: "account_roles",
                column: "role_id");

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                table: "accounts",
                column: "normalized_email");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                table: "accounts",
                column: "normalized_user_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_api_tokens_token_hash",
                table: "api_tokens",
                column: "token_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_audit_entries_teardown_id_id",
                table: "audit_entries",
                columns: new[] { "teardown_id", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_bench_tests_id",
                table: "bench_tests",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_boards_id",
                table: "boards",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_callouts_id",
                table: "callouts",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_callouts_revision_id_photo_id",
                table: "callouts",
                columns: new[] { "revision_id", "photo_id" });

            migrationBuilder.CreateIndex(
                name: "ix_claims_id",
                table: "claims",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_components_family_id_revision_id",
                table: "components",
                columns: new[] { "family_id", "revision_id" });

            migrationBuilder.CreateIndex(
                name: "ix_components_id",
                table: "components",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_components_revision_id_board_id_position",
                table: "components",
                columns: new[] { "revision_id", "board_id", "position" });

            migrationBuilder.CreateIndex(
                name: "ix_current_figures_rule_low_component_id",
                table: "current_figures",
                columns: new[] { "rule", "low", "component_id" });

            migrationBuilder.CreateIndex(
                name: "ix_current_figures_rule_nominal_component_id",
                table: "current_figures",
                columns: new[] { "rule", "nominal", "component_id" });

            migrationBuilder.CreateIndex(
                name: "ix_current_figures_teardown_id",
                table: "current_figures",
                column: "teardown_id");

            migrationBuilder.CreateIndex(
                name: "ix_families_match_key",
                table: "families",
                column: "match_key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_families_merged_into_id",
                table: "families",
                column: "merged_into_id");

            migrationBuilder.CreateIndex(
                name: "ix_families_search_key",
                table: "families",
                column: "search_key")
                .Annotation("Npgsql:IndexOperators", new[] { "text_pattern_ops" });

            migrationBuilder.CreateIndex(
                name: "ix_families_slug",
                table: "families",
                column: "slug",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_family_aliases_match_key",
                table: "family_aliases",
                column: "match_key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_family_makers_maker_id",
                table: "family_makers",
                column: "maker_id");

            migrationBuilder.CreateIndex(
                name: "ix_figures_id",
                table: "figures",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_figures_revision_id_component_id_rule",
                table: "figures",
                columns: new[] { "revision_id", "component_id", "rule" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_findings_id",
                table: "findings",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_jobs_kind_subject",
                table: "jobs",
                columns: new[] { "kind", "subject" },
                unique: true,
                filter: "done_at is null and failure is null");

            migrationBuilder.CreateIndex(
                name: "ix_jobs_not_before_id",
                table: "jobs",
                columns: new[] { "not_before", "id" },
                filter: "done_at is null and failure is null");

            migrationBuilder.CreateIndex(
                name: "ix_maker_aliases_name_key",
                table: "maker_aliases",
                column: "name_key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_makers_name_key",
                table: "makers",
                column: "name_key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_makers_name_key1",
                table: "makers",
                column: "name_key")
                .Annotation("Npgsql:IndexMethod", "gin")
                .Annotation("Npgsql:IndexOperators", new[] { "gin_trgm_ops" });

            migrationBuilder.CreateIndex(
                name: "ix_makers_slug",
                table: "makers",
                column: "slug",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_one_time_sign_ins_account_id",
                table: "one_time_sign_ins",
                column: "account_id");

            migrationBuilder.CreateIndex(
                name: "ix_photos_id",
                table: "photos",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_photos_sha256",
                table: "photos",
                column: "sha256");

            migrationBuilder.CreateIndex(
                name: "ix_ports_id",
                table: "ports",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_products_brand_id_identity_key",
                table: "products",
                columns: new[] { "brand_id", "identity_key" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_publications_published_at",
                table: "publications",
                column: "published_at");

            migrationBuilder.CreateIndex(
                name: "ix_publications_revision_id",
                table: "publications",
                column: "revision_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_publications_teardown_id",
                table: "publications",
                column: "teardown_id");

            migrationBuilder.CreateIndex(
                name: "ix_rail_quantities_id",
                table: "rail_quantities",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_rail_quantities_revision_id_rail_id_kind",
                table: "rail_quantities",
                columns: new[] { "revision_id", "rail_id", "kind" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_rails_id",
                table: "rails",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_rails_revision_id_name",
                table: "rails",
                columns: new[] { "revision_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_ratings_id",
                table: "ratings",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_ratings_revision_id_component_id",
                table: "ratings",
                columns: new[] { "revision_id", "component_id" });

            migrationBuilder.CreateIndex(
                name: "ix_revisions_published_at_id",
                table: "revisions",
                columns: new[] { "published_at", "id" },
                filter: "state = 'published'");

            migrationBuilder.CreateIndex(
                name: "ix_revisions_teardown_id",
                table: "revisions",
                column: "teardown_id",
                unique: true,
                filter: "state in ('draft', 'in_review')");

            migrationBuilder.CreateIndex(
                name: "ix_revisions_teardown_id_number",
                table: "revisions",
                columns: new[] { "teardown_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_revisions_teardown_id1",
                table: "revisions",
                column: "teardown_id",
                unique: true,
                filter: "state = 'published'");

            migrationBuilder.CreateIndex(
                name: "ix_role_claims_role_id",
                table: "role_claims",
                column: "role_id");

            migrationBuilder.CreateIndex(
                name: "RoleNameIndex",
                table: "roles",
                column: "normalized_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_steps_id",
                table: "steps",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_teardowns_number",
                table: "teardowns",
                column: "number",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_teardowns_product_id",
                table: "teardowns",
                column: "product_id");

            migrationBuilder.CreateIndex(
                name: "ix_teardowns_slug",
                table: "teardowns",
                column: "slug",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "account_claims");

            migrationBuilder.DropTable(
                name: "account_logins");

            migrationBuilder.DropTable(
                name: "account_passkeys");

            migrationBuilder.DropTable(
                name: "account_roles");

            migrationBuilder.DropTable(
                name: "account_tokens");

            migrationBuilder.DropTable(
                name: "api_tokens");

            migrationBuilder.DropTable(
                name: "audit_entries");

            migrationBuilder.DropTable(
                name: "bench_tests");

            migrationBuilder.DropTable(
                name: "callouts");

            migrationBuilder.DropTable(
                name: "claims");

            migrationBuilder.DropTable(
                name: "current_figures");

            migrationBuilder.DropTable(
                name: "data_protection_keys");

            migrationBuilder.DropTable(
                name: "family_aliases");

            migrationBuilder.DropTable(
                name: "family_makers");

            migrationBuilder.DropTable(
                name: "figures");

            migrationBuilder.DropTable(
                name: "findings");

            migrationBuilder.DropTable(
                name: "jobs");

            migrationBuilder.DropTable(
                name: "lab_settings");

            migrationBuilder.DropTable(
                name: "maker_aliases");

            migrationBuilder.DropTable(
                name: "one_time_sign_ins");

            migrationBuilder.DropTable(
                name: "ports");

            migrationBuilder.DropTable(
                name: "publications");

            migrationBuilder.DropTable(
                name: "rail_quantities");

            migrationBuilder.DropTable(
                name: "ratings");

            migrationBuilder.DropTable(
                name: "renditions");

            migrationBuilder.DropTable(
                name: "role_claims");

            migrationBuilder.DropTable(
                name: "site_state");

            migrationBuilder.DropTable(
                name: "steps");

            migrationBuilder.DropTable(
                name: "photos");

            migrationBuilder.DropTable(
                name: "accounts");

            migrationBuilder.DropTable(
                name: "rails");

            migrationBuilder.DropTable(
                name: "components");

            migrationBuilder.DropTable(
                name: "roles");

            migrationBuilder.DropTable(
                name: "media_files");

            migrationBuilder.DropTable(
                name: "boards");

            migrationBuilder.DropTable(
                name: "families");

            migrationBuilder.DropTable(
                name: "revisions");

            migrationBuilder.DropTable(
                name: "teardowns");

            migrationBuilder.DropTable(
                name: "products");

            migrationBuilder.DropTable(
                name: "makers");
        }
    }
}
