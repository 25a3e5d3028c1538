-- What a database needs that several shops share, PostgreSQL 13 or later.

-- Ids are ordered and found by their letters' codes, as in a folder's store, whatever the server's language.
alter table case_file alter column case_id type varchar(40) collate "C";

-- Lists of open and of closed cases find their page without walking past all others.
create index case_file_open on case_file (case_no) where signed_off_at is null;
create index case_file_closed on case_file (case_no) where signed_off_at is not null;

-- The login that kept the entry, as the server knows it; no login may write it. Empty for entries from before.
alter table case_entry add column kept_by varchar(63);
alter table case_entry alter column kept_by set default session_user;

-- The bytes of attachments, which all shops must reach.
create table case_attachment (
    case_id varchar(40) collate "C" not null,
    sha256 varchar(64) collate "C" not null,
    bytes bytea not null,
    primary key (case_id, sha256),
    constraint bytes_as_named check (encode(sha256(bytes), 'hex') = sha256)
);
-- Photographs do not become smaller.
alter table case_attachment alter column bytes set storage external;

-- An entry added to a case that is there bears the name of the login, whatever program sends it. Only a case that comes in
-- whole brings the names of those who made it; the owner of the tables, who copies stores, may add to one as well.
create function case_entry_in_own_name() returns trigger language plpgsql set search_path = public, pg_temp as $$
begin
    if new.who <> session_user::text and new.entry_number > 1
        and not pg_has_role(session_user, (select relowner from pg_class where oid = tg_relid), 'usage')
        and not exists (select from case_entry first where first.case_no = new.case_no and first.entry_number = 1
            and first.xmin = pg_current_xact_id()::xid)
    then
        raise exception 'an entry in the name of another' using errcode = 'insufficient_privilege';
    end if;
    return new;
end $$;
create trigger in_own_name before insert on case_entry for each row execute function case_entry_in_own_name();
