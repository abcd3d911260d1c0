using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Catalogue.Data.Migrations
{
    /// <summary>
    /// What the model cannot say: references that clear one column of a composite key, and the guards that keep published revisions as they
    /// were published, also against plain SQL.
    /// </summary>
    public partial class ReferencesAndGuards : Migration
    {
        private static readonly string[] ContentTables =
        [
            "bench_tests", "boards", "callouts", "claims", "components", "figures", "findings", "photos", "ports", "rail_quantities", "rails", "ratings", "steps",
        ];

        private static readonly (string Table, string Column, string Target)[] References =
        [
            ("boards", "parent_id", "boards"),
            ("bench_tests", "port_id", "ports"),
            ("callouts", "board_id", "boards"),
            ("callouts", "component_id", "components"),
            ("callouts", "port_id", "ports"),
            ("claims", "port_id", "ports"),
            ("components", "rail_id", "rails"),
            ("photos", "board_id", "boards"),
            ("steps", "photo_id", "photos"),
        ];

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            foreach (var (table, column, target) in References)
            {
                migrationBuilder.Sql($"""
                    alter table {table} add constraint fk_{table}_{column} foreign key (revision_id, {column})
                        references {target} (revision_id, id) on delete set null ({column}) deferrable initially deferred;
                    create index ix_{table}_{column} on {table} (revision_id, {column}) where {column} is not null;
                    """);
            }

            migrationBuilder.Sql("""
                create function refuse_change_of_published_content() returns trigger language plpgsql as $$
                declare
                    final_revision uuid;
                begin
                    -- The share lock makes a publication that is under way wait for this row, or this row wait for it.
                    perform 1 from revisions
                        where id in (case when tg_op = 'INSERT' then new.revision_id else old.revision_id end,
                                     case when tg_op = 'DELETE' then old.revision_id else new.revision_id end)
                        for share;
                    select id into final_revision from revisions
                        where id in (case when tg_op = 'INSERT' then new.revision_id else old.revision_id end,
                                     case when tg_op = 'DELETE' then old.revision_id else new.revision_id end)
                          and state not in ('draft', 'in_review')
                        limit 1;
                    if final_revision is not null then
                        raise exception 'revision % is published: its % never change', final_revision, tg_table_name
                            using errcode = 'restrict_violation', hint = 'Open a draft and publish a new revision.';
                    end if;
                    return case when tg_op = 'DELETE' then old else new end;
                end $$;

                create function refuse_change_of_published_revision() returns trigger language plpgsql as $$
                begin
                    if old.state in ('draft', 'in_review') then
                        return case when tg_op = 'DELETE' then old else new end;
                    end if;
                    if tg_op = 'DELETE' then
                        raise exception 'revision % is published and is never deleted', old.id using errcode = 'restrict_violation';
                    end if;
                    if to_jsonb(new) - 'state' is distinct from to_jsonb(old) - 'state'
                       or (old.state, new.state) not in (('published', 'published'), ('published', 'superseded'), ('published', 'withdrawn'),
                                                         ('superseded', 'superseded'), ('superseded', 'withdrawn'), ('withdrawn', 'withdrawn')) then
                        raise exception 'revision % is published and never changes', old.id
                            using errcode = 'restrict_violation', hint = 'It can only be superseded or withdrawn.';
                    end if;
                    return new;
                end $$;

                create function refuse_change() returns trigger language plpgsql as $$
                begin
                    raise exception '% is kept as it was written: no % here', tg_table_name, lower(tg_op) using errcode = 'restrict_violation';
                end $$;

                create function raise_site_version() returns trigger language plpgsql as $$
                begin
                    update site_state set site_version = site_version + 1 where id = 1;
                    return null;
                end $$;

                create trigger published_revision_never_changes before update or delete on revisions
                    for each row execute function refuse_change_of_published_revision();
                alter table revisions enable always trigger published_revision_never_changes;
                create trigger revisions_never_truncated before truncate on revisions
                    for each statement execute function refuse_change();
                create trigger revision_raises_site_version after update of state on revisions
                    for each row when (old.state is distinct from new.state and new.state in ('published', 'withdrawn')) execute function raise_site_version();
                create trigger settings_raise_site_version after update on lab_settings
                    for each row execute function raise_site_version();
                create trigger families_raise_site_version after update on families
                    for each row execute function raise_site_version();
                create trigger current_figures_raise_site_version after insert or update or delete on current_figures
                    for each statement execute function raise_site_version();
                """);

            foreach (var table in ContentTables)
            {
                migrationBuilder.Sql($"""
                    create trigger published_content_never_changes before insert or update or delete on {table}
                        for each row execute function refuse_change_of_published_content();
                    alter table {table} enable always trigger published_content_never_changes;
                    create trigger content_never_truncated before truncate on {table}
                        for each statement execute function refuse_change();
                    """);
            }

            foreach (var table in new[] { "publications", "audit_entries" })
            {
                migrationBuilder.Sql($"""
                    create trigger never_changes before update or delete on {table}
                        for each row execute function refuse_change();
                    create trigger never_truncated before truncate on {table}
                        for each statement execute function refuse_change();
                    alter table {table} enable always trigger never_changes;
                    """);
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            foreach (var table in new[] { "publications", "audit_entries" })
                migrationBuilder.Sql($"drop trigger never_changes on {table}; drop trigger never_truncated on {table};");
            foreach (var table in ContentTables)
                migrationBuilder.Sql($"drop trigger published_content_never_changes on {table}; drop trigger content_never_truncated on {table};");
            migrationBuilder.Sql("""
                drop trigger current_figures_raise_site_version on current_figures;
                drop trigger families_raise_site_version on families;
                drop trigger settings_raise_site_version on lab_settings;
                drop trigger revision_raises_site_version on revisions;
                drop trigger revisions_never_truncated on revisions;
                drop trigger published_revision_never_changes on revisions;
                drop function raise_site_version();
                drop function refuse_change();
                drop function refuse_change_of_published_revision();
                drop function refuse_change_of_published_content();
                """);
            foreach (var (table, column, _) in References)
                migrationBuilder.Sql($"drop index ix_{table}_{column}; alter table {table} drop constraint fk_{table}_{column};");
        }
    }
}
