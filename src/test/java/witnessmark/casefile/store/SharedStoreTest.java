package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.SignedOff;
import witnessmark.casefile.history.Stamp;
import witnessmark.casefile.yaml.CaseDocument;

/** A store on a server that several shops share: the contract as a shop's login, and what belongs to the server. */
@Tag("long")
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class SharedStoreTest extends CaseStoreContract {
    private static PostgresServer server;

    @TempDir
    Path folder;

    private String database;

    @BeforeAll
    static void start() throws Exception {
        server = PostgresServer.common();
    }

    @BeforeEach
    @Override
    void begin() throws Exception {
        database = server.emptyStore();
        super.begin();
    }

    @Override
    StoreLocation location() {
        return server.location(database, "anna");
    }

    @Override
    StoreLocation elsewhere() throws Exception {
        return server.location(server.emptyStore(), "anna");
    }

    @Override
    StoreLocation ofSomethingElse() throws Exception {
        String other = server.emptyDatabase();
        server.admin(other, "create table payroll (id int)");
        return server.location(other, PostgresServer.OWNER);
    }

    @Override
    int version() {
        return CaseStore.SHARED_SCHEMA;
    }

    @Override
    int often() {
        return 25;
    }

    @Override
    Connection raw() throws Exception {
        return server.raw(database);
    }

    /** Even the owner must put the rule aside before the table takes bytes under a hash not theirs. */
    @Override
    void damage(Attachment attachment, byte[] bytes) throws Exception {
        server.admin(database, "alter table case_attachment drop constraint if exists bytes_as_named");
        try (Connection connection = raw();
                PreparedStatement statement = connection.prepareStatement(
                        bytes.length == 0 ? "delete from case_attachment" : "update case_attachment set bytes = ?")) {
            if (bytes.length > 0) {
                statement.setBytes(1, bytes);
            }
            assertThat(statement.executeUpdate()).isEqualTo(1);
        }
    }

    private CaseStore as(String login) {
        return new CaseStore(server.location(database, login), Clock.systemUTC());
    }

    /** What the login may do with any other program. */
    private Connection by(String login) throws SQLException {
        return DriverManager.getConnection(server.url(database), login, PostgresServer.PASSWORD);
    }

    @Test
    void who_made_an_entry_is_the_database_login_whoever_is_named() {
        store.open(opened(ID, "t"), "mallory");
        try (CaseStore other = as("ben")) {
            other.append(ID, new SignedOff(), "anna");
        }

        CaseHistory kept = store.read(ID);

        assertThat(kept.entries()).extracting(e -> e.stamp().who()).containsExactly("anna", "ben");
        assertThat(kept.present().signedOff().orElseThrow().who()).isEqualTo("ben");
        assertThat(store.login()).contains("anna");
    }

    @Test
    void the_server_itself_takes_no_entry_added_in_the_name_of_another_and_notes_who_kept_each() throws Exception {
        store.open(opened(ID, "t"), "anna");
        String forged = "insert into case_entry (case_no, entry_number, made_at, who, kind, body, previous_hash, hash,"
                + " line_number, line_hash) select case_no, entry_number + 1, made_at, '%s', kind, body, hash, hash, 99,"
                + " hash from case_entry";

        try (Connection connection = by("ben");
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.executeUpdate(forged.formatted("anna")))
                    .isInstanceOf(SQLException.class)
                    .hasMessageContaining("an entry in the name of another");
            assertThatThrownBy(() -> statement.executeUpdate(
                            "insert into case_entry (case_no, entry_number, kept_by) values (1, 9, 'anna')"))
                    .hasMessageContaining("permission denied");
            assertThat(statement.executeUpdate(forged.formatted("ben"))).isEqualTo(1);
        }
        try (Connection connection = raw();
                var rows = connection
                        .createStatement()
                        .executeQuery("select string_agg(kept_by, ' ' order by entry_number) from case_entry")) {
            rows.next();
            assertThat(rows.getString(1)).isEqualTo("anna ben");
        }
    }

    @Test
    void a_case_that_comes_in_whole_brings_the_names_of_those_who_made_it() {
        Stamp carl = new Stamp(Instant.parse("2026-01-02T03:04:05Z"), "carl");
        CaseHistory made = CaseHistory.open(opened(ID, "t"), carl)
                .with(new NoteAdded("n"), carl)
                .with(new NoteAdded("m"), carl);

        store.importCase(CaseDocument.of(made), "anna");

        assertThat(store.read(ID)).isEqualTo(made);
        assertThat(store.append(ID, new NoteAdded("more"), "carl")
                        .last()
                        .stamp()
                        .who())
                .isEqualTo("anna");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update case_entry set who = 'ben'",
                "update case_entry set body = body",
                "update case_entry set line_number = 5",
                "delete from case_entry",
                "truncate case_entry",
                "delete from case_file",
                "update case_file set case_id = 'x'",
                "delete from case_text",
                "update case_finding set state = 'absent'",
                "delete from case_attachment",
                "delete from store_head",
                "insert into store_head values (2, 0, '', false)",
                "insert into case_attachment values ('x', repeat('0', 64), 'other')",
                "update flyway_schema_history set version = '99'",
                "alter table case_entry disable trigger all",
                "drop trigger in_own_name on case_entry",
                "create table own (id int)",
                "create schema own",
                "create temporary table own (id int)",
                "create role own",
                "set role contract_owner",
                "copy case_entry to program 'cat'"
            })
    void a_shops_login_may_add_and_nothing_else(String sql) throws Exception {
        openWithFindings();

        try (Connection connection = by("anna");
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.execute(sql))
                    .isInstanceOfSatisfying(
                            SQLException.class,
                            e -> assertThat(e.getSQLState()).as(e.getMessage()).isIn("42501", "23514"));
        }
    }

    @Test
    void a_login_that_is_none_of_the_shops_reads_nothing() throws Exception {
        server.runScript("private");
        server.admin("postgres", "alter role private_owner password 'x'");

        // a shop of one database is none of another's
        assertThatThrownBy(() -> DriverManager.getConnection(server.url("private"), "anna", PostgresServer.PASSWORD))
                .hasMessageContaining("permission denied for database");
        try (CaseStore away = new CaseStore(server.location("private", "anna"), Clock.systemUTC())) {
            assertThatThrownBy(() -> away.ids("", 1))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessageContaining("this login may not do that");
        }
    }

    @Test
    void tables_that_are_missing_or_older_are_for_the_owner_to_make() throws Exception {
        server.runScript("later");
        server.admin(
                "postgres",
                "alter role later_owner password '" + PostgresServer.PASSWORD.replace("'", "''") + "'",
                "create role carla login in role later_shop",
                "alter role carla password '" + PostgresServer.PASSWORD.replace("'", "''") + "'");
        StoreLocation ofCarla = server.location("later", "carla");
        StoreLocation ofOwner = server.location("later", "later_owner");

        assertRefused(
                ofCarla,
                "it has no tables that this login can see, and the login may not make any; let the owner of the database"
                        + " run: store prepare");
        try (CaseStore owner = new CaseStore(ofOwner, Clock.systemUTC())) {
            owner.open(opened(ID, "t"), "later_owner");
        }
        // as a program left it that knew nothing of shared servers
        server.admin(
                "later",
                "drop trigger in_own_name on case_entry",
                "drop function case_entry_in_own_name",
                "drop table case_attachment, case_interview",
                "drop index case_file_open, case_file_closed, case_text_words",
                "alter table case_entry drop column kept_by",
                "delete from flyway_schema_history where version in ('3', '4')");
        assertRefused(ofCarla, "its tables are of version 2, this program needs 4; let the owner of the database run:");
        assertRefused(ofOwner, "its tables are of version 2, this program needs 4; let the owner of the database run:");
        try (CaseStore shop = new CaseStore(ofCarla, Clock.systemUTC())) {
            assertThatThrownBy(shop::prepare).hasMessageContaining("this login may not make or change its tables");
        }
        try (CaseStore owner = new CaseStore(ofOwner, Clock.systemUTC())) {
            owner.prepare();
        }

        try (CaseStore shop = new CaseStore(ofCarla, Clock.systemUTC())) {
            shop.append(ID, new NoteAdded("n"), "carla");
            assertThat(shop.verifyStore().isWhole()).isTrue();
        }
    }

    private static void assertRefused(StoreLocation location, String why) {
        try (CaseStore store = new CaseStore(location, Clock.systemUTC())) {
            assertThatThrownBy(() -> store.ids("", 1))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessageContaining(why);
        }
    }

    @Test
    void a_wrong_password_is_told_without_showing_it() {
        StoreLocation wrong = StoreLocation.of(Database.named("store", server.url(database), "anna", "not-the-one"));

        try (CaseStore locked = new CaseStore(wrong, Clock.systemUTC())) {
            assertThatThrownBy(() -> locked.ids("", 1))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessage("case store " + wrong.shown()
                            + ": the database does not admit this user; check user and password")
                    .hasStackTraceContaining("password authentication failed")
                    .satisfies(e -> assertThat(stackTrace(e)).doesNotContain("not-the-one"));
        }
    }

    private static String stackTrace(Throwable thrown) {
        java.io.StringWriter text = new java.io.StringWriter();
        thrown.printStackTrace(new java.io.PrintWriter(text));
        return text.toString();
    }

    @Test
    void a_database_that_is_not_there_is_named() {
        assertRefused(
                server.location("nowhere", "anna"), "the database says: FATAL: database \"nowhere\" does not exist");
    }

    @Test
    void the_line_is_encrypted_unless_the_address_says_otherwise() throws Exception {
        assertThat(isEncrypted(server.url(database))).isTrue();
        assertThat(isEncrypted(server.url(database, "require"))).isTrue();
        assertThat(isEncrypted(server.url(database, "disable"))).isFalse();
    }

    private static boolean isEncrypted(String url) throws SQLException {
        try (Connection connection = Database.named("store", url, "anna", PostgresServer.PASSWORD)
                        .connect();
                var row = connection
                        .createStatement()
                        .executeQuery("select ssl from pg_stat_ssl where pid = pg_backend_pid()")) {
            row.next();
            return row.getBoolean(1);
        }
    }

    @Test
    void a_server_that_cannot_show_who_it_is_is_not_talked_to() throws Exception {
        Path other = folder.resolve("other.crt");
        TestCertificate.write("localhost", other, folder.resolve("other.key"));
        String url = server.url(database);
        String mend = "name the server's certificate or its issuer's in the address with sslrootcert=FILE";

        assertRefused(unsecured(url.replace(server.certificate().toString(), other.toString())), mend);
        assertRefused(unsecured(url.replace("localhost", "127.0.0.1")), mend);
        assertRefused(unsecured(url.replaceAll("\\?.*", "?sslrootcert=/nowhere/at.crt")), mend);
    }

    @Test
    void a_server_without_tls_is_not_talked_to_unless_the_address_says_so() throws Exception {
        try (PostgresServer plain = PostgresServer.start()) {
            String name = plain.emptyStore();
            plain.admin("postgres", "alter system set ssl = off", "select pg_reload_conf()");
            Thread.sleep(500);

            for (String url : List.of(plain.url(name), plain.url(name, "require"))) {
                StoreLocation secured = StoreLocation.of(Database.named("store", url, "anna", PostgresServer.PASSWORD));
                assertRefused(
                        secured,
                        "the line to the server is not secured: The server does not support SSL; let the server's"
                                + " administrator switch TLS on; on a line nobody else can reach, write sslmode=disable");
            }
            StoreLocation open = StoreLocation.of(
                    Database.named("store", plain.url(name, "disable"), "anna", PostgresServer.PASSWORD));
            try (CaseStore store = new CaseStore(open, Clock.systemUTC())) {
                assertThat(store.ids("", 1)).isEmpty();
            }
        }
    }

    private static StoreLocation unsecured(String url) {
        return StoreLocation.of(Database.named("store", url, "anna", PostgresServer.PASSWORD));
    }

    @Test
    void a_server_gone_in_mid_session_is_told_and_used_again_when_it_is_back() throws Exception {
        try (PostgresServer own = PostgresServer.start()) {
            String name = own.emptyStore();
            try (CaseStore session = new CaseStore(own.location(name, "anna"), Clock.systemUTC())) {
                session.open(opened(ID, "t"), "anna");
                own.kill();
                assertThatThrownBy(() -> session.append(ID, new NoteAdded("lost"), "anna"))
                        .isInstanceOf(StoreUnavailable.class)
                        .hasMessageEndingWith(": the database cannot be reached; check that it runs, then repeat");
                own.begin();
                session.append(ID, new NoteAdded("after"), "anna");

                assertThat(session.read(ID).present().notes()).containsExactly("after");
                assertThat(session.verifyStore().isWhole()).isTrue();
            }
        }
    }

    @Test
    void a_server_that_comes_back_by_itself_is_waited_for() throws Exception {
        try (PostgresServer own = PostgresServer.start()) {
            String name = own.emptyStore();
            try (CaseStore session = new CaseStore(own.location(name, "anna"), Clock.systemUTC())) {
                session.open(opened(ID, "t"), "anna");
                own.kill();
                Thread back = new Thread(() -> {
                    try {
                        Thread.sleep(1_000);
                        own.begin();
                    } catch (Exception e) {
                        throw new IllegalStateException(e);
                    }
                });
                back.start();

                session.append(ID, new NoteAdded("kept"), "anna");
                back.join();

                assertThat(session.read(ID).present().notes()).containsExactly("kept");
            }
        }
    }

    @Test
    void a_shell_that_was_thrown_out_by_the_server_goes_on() throws Exception {
        store.open(opened(ID, "t"), "anna");
        server.admin(
                "postgres",
                "select pg_terminate_backend(pid) from pg_stat_activity where datname = '" + database + "'");

        store.append(ID, new NoteAdded("n"), "anna");

        assertThat(store.read(ID).entries()).hasSize(2);
    }

    @Test
    void what_is_acknowledged_is_on_the_disk_where_the_server_does_not_wait_for_others() throws Exception {
        server.admin("postgres", "alter database " + database + " set synchronous_commit = off");
        try (CaseStore own = as("anna")) {
            String setting = own.session()
                    .read(sql -> sql.queryForObject("select current_setting('synchronous_commit')", String.class));

            assertThat(setting).isEqualTo("on");
        }
    }

    @Test
    void a_store_has_no_journal_to_make_it_from() {
        assertThatThrownBy(store::rebuild)
                .hasMessageEndingWith(
                        "its journal is the database server's own log; use the means of the server to bring"
                                + " it back");
        assertThatThrownBy(store::beginJournal).isInstanceOf(StoreUnavailable.class);
    }

    @Test
    void a_change_waits_for_another_and_not_for_ever() throws Exception {
        store.open(opened(ID, "t"), "anna");
        try (Connection held = by("ben");
                Statement statement = held.createStatement()) {
            held.setAutoCommit(false);
            statement.execute("set idle_in_transaction_session_timeout = '3s'");
            statement.execute("select last_line from store_head for update");
            long begun = System.nanoTime();

            store.append(ID, new NoteAdded("n"), "anna");

            assertThat(Duration.ofNanos(System.nanoTime() - begun))
                    .isBetween(Duration.ofSeconds(1), Duration.ofSeconds(30));
        }
        assertThat(store.verifyStore().isWhole()).isTrue();
    }

    @Test
    void the_highest_version_known_is_that_of_the_migrations() throws Exception {
        try (Stream<Path> files = Files.list(Path.of("src/main/resources/db/shared"))) {
            assertThat(files.map(f -> f.getFileName().toString())
                            .filter(n -> n.startsWith("V"))
                            .mapToInt(n -> Integer.parseInt(n.replaceAll("V(\\d+)__.*", "$1")))
                            .max())
                    .hasValue(Schema.SHARED_VERSION);
        }
    }

    @Test
    void a_file_says_where_the_database_is_and_is_for_its_owner_alone() throws Exception {
        Path file = PostgresServer.file(folder.resolve("shop"), server.url(database), "anna", PostgresServer.PASSWORD);

        try (CaseStore named = new CaseStore(StoreLocation.shared(file), Clock.systemUTC())) {
            named.open(opened(new CaseId("by-file"), "t"), "anna");
        }
        assertThat(store.ids("by-", 2)).containsExactly(new CaseId("by-file"));

        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
        assertThatThrownBy(() -> StoreLocation.shared(file))
                .isInstanceOf(CaseRefused.class)
                .hasMessage(
                        "database file '" + file + "': others may read or write it; close it with: chmod 600 " + file);
    }

    @Test
    void letters_of_every_kind_are_kept() {
        String letters = "Größe 4 µm, señal, ギア, \uD83D\uDE9A, \"quoted\" \\ 'so' % _ ?";
        store.open(opened(ID, letters), "anna");
        store.attach(ID, "bild-ä.jpg", "image/jpeg", letters.getBytes(UTF_8), "anna");

        assertThat(store.read(ID).present().title()).isEqualTo(letters);
        assertThat(store.list(CaseQuery.all().withText("GRÖSSE \uD83D\uDE9A"))).isEmpty();
        assertThat(store.list(CaseQuery.all().withText("GRÖßE \uD83D\uDE9A"))).hasSize(1);
        assertThat(store.verifyStore().isWhole()).isTrue();
    }
}
