-- Where interrupted interviews go on: beside the case and its chain, one short text a case.
create table case_interview (
    case_id varchar(40) collate "C" not null primary key,
    place varchar(4000) not null
);
