-- Makes a database for a store that several shops share, with the roles that use it. Once, as an administrator of the server
-- (PostgreSQL 13 or later):
--
--     psql -d postgres -v name=cases -f shared-store.sql
--
-- It asks for no password and sets none. Afterwards, in psql:
--
--     \password cases_owner                 the owner makes and completes the tables: store prepare
--     create role anna login in role cases_shop;
--     \password anna                        one login for each who makes entries: the entries bear its name
--
-- To take somebody's login away: alter role anna nologin. What anna entered stays.
\set ON_ERROR_STOP on
\if :{?name}
\else
    \set name cases
\endif
\set owner :name _owner
\set shop :name _shop

-- No login with the database's own name may do more than these two.
create role :"owner" login nosuperuser nocreatedb nocreaterole noreplication;
create role :"shop" nologin nosuperuser nocreatedb nocreaterole noreplication;
create database :"name" owner :"owner" encoding 'UTF8' template template0;
revoke all on database :"name" from public;
grant connect on database :"name" to :"shop";

\connect :name
revoke all on schema public from public;
grant usage on schema public to :"shop";
grant usage, create on schema public to :"owner";
-- Words are found within a million cases by it.
create extension if not exists pg_trgm;
\echo Made: database :name, roles :owner and :shop. Next give :owner a password.
