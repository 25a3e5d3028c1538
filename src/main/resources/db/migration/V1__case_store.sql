-- One row for each case: what lists show, and the entry the chain must end with.
create table case_file (
    case_id varchar(40) not null primary key,
    title varchar(200) not null,
    unit varchar(200) not null,
    opened_at timestamp(3) with time zone not null,
    changed_at timestamp(3) with time zone not null,
    signed_off_at timestamp(3) with time zone,
    last_number bigint not null,
    last_hash varchar(64) not null
);
create index case_file_changed on case_file (changed_at desc, case_id);

-- The text that is searched, in lower case, apart so that the search reads no more than it needs.
create table case_text (
    case_id varchar(40) not null primary key references case_file (case_id),
    words varchar(2500) not null
);

-- The history: never changed, only added to.
create table case_entry (
    case_id varchar(40) not null references case_file (case_id),
    entry_number bigint not null,
    made_at timestamp(3) with time zone not null,
    who varchar(200) not null,
    kind varchar(40) not null,
    body varchar(1000000) not null,
    previous_hash varchar(64) not null,
    hash varchar(64) not null,
    primary key (case_id, entry_number)
);

-- The present state, as the entries lead to it.
create table case_finding (
    case_id varchar(40) not null references case_file (case_id),
    finding varchar(60) not null,
    state varchar(20) not null,
    primary key (case_id, finding)
);
create index case_finding_state on case_finding (finding, state, case_id);

create table case_measurement (
    case_id varchar(40) not null references case_file (case_id),
    measure varchar(60) not null,
    reading double precision not null,
    unit varchar(20) not null,
    primary key (case_id, measure)
);
create index case_measurement_measure on case_measurement (measure, case_id);
