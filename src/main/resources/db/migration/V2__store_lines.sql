-- Every entry gets a number in the whole store, in the order of keeping, and a hash chained to the one before it, so
-- that a case or an entry taken out shows. Empty where entries were kept before: they are numbered at the next start.
-- Each statement may be repeated, as the embedded database does not take them back together.
alter table case_entry add column if not exists line_number bigint;
alter table case_entry add column if not exists line_hash varchar(64);
create unique index if not exists case_entry_line on case_entry (line_number);

-- One row: the last line, and whether the journal beside the database was begun.
create table if not exists store_head (
    only_row int not null primary key,
    last_line bigint not null,
    last_hash varchar(64) not null,
    journal_begun boolean not null
);
