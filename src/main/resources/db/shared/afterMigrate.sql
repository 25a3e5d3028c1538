-- Run after every look at the migrations: an index that needs an extension, and the rights of the shops' logins.

do $$
begin
    if exists (select from pg_extension where extname = 'pg_trgm') then
        create index if not exists case_text_words on case_text using gin (words gin_trgm_ops);
    end if;
end $$;

-- The shops add entries and never change or take away one; what is searched follows the entries.
do $$
declare
    shop constant text := current_database() || '_shop';
begin
    if exists (select from pg_roles where rolname = shop) then
        execute format('revoke all on all tables in schema public from %I', shop);
        execute format('grant select on all tables in schema public to %I', shop);
        execute format('grant insert (case_id, title, unit, opened_at, changed_at, signed_off_at, last_number, last_hash),'
            ' update (title, unit, changed_at, signed_off_at, last_number, last_hash) on case_file to %I', shop);
        execute format('grant insert (case_no, entry_number, made_at, who, kind, body, previous_hash, hash, line_number,'
            ' line_hash) on case_entry to %I', shop);
        execute format('grant insert, update (words) on case_text to %I', shop);
        execute format('grant insert, delete on case_finding, case_measurement to %I', shop);
        execute format('grant insert, update (bytes) on case_attachment to %I', shop);
        execute format('grant insert, update (place) on case_interview to %I', shop);
        execute format('grant update (last_line, last_hash) on store_head to %I', shop);
    end if;
end $$;
