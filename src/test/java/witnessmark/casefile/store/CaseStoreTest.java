package witnessmark.casefile.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.NoteAdded;

/** A store in a folder: the contract, and what belongs to files. */
class CaseStoreTest extends CaseStoreContract {
    @TempDir
    Path folder;

    @Override
    StoreLocation location() {
        return StoreLocation.in(folder);
    }

    @Override
    StoreLocation elsewhere() {
        return StoreLocation.in(folder.resolve("other"));
    }

    @Override
    StoreLocation ofSomethingElse() throws Exception {
        try (Connection connection = raw();
                var statement = connection.createStatement()) {
            statement.execute("create table payroll (id int)");
        }
        return location();
    }

    @Override
    int version() {
        return CaseStore.SCHEMA;
    }

    @Override
    void damage(Attachment attachment, byte[] bytes) throws Exception {
        Path file = folder.resolve("attachments").resolve(ID.text()).resolve(attachment.sha256());
        if (bytes.length == 0) {
            Files.delete(file);
        } else {
            Files.write(file, bytes);
        }
    }

    @Override
    int often() {
        return 4;
    }

    @Override
    Connection raw() throws Exception {
        return DriverManager.getConnection("jdbc:h2:file:" + folder.resolve("cases"), "sa", "");
    }

    @Test
    void nothing_is_made_before_the_first_use() throws Exception {
        try (CaseStore unused = new CaseStore(StoreLocation.in(folder.resolve("later")), Clock.systemUTC())) {
            assertThat(unused).hasToString("case store " + folder.resolve("later"));
        }

        assertThat(folder.resolve("later")).doesNotExist();
    }

    @Test
    void a_damaged_database_file() throws Exception {
        Files.writeString(folder.resolve("cases.mv.db"), "this is no database ".repeat(1_000));

        assertThatThrownBy(() -> store.ids("", 1))
                .isInstanceOf(StoreUnavailable.class)
                .hasMessage("case store " + folder + ": the database file is damaged; keep a copy of it, and bring"
                        + " the store back from a copy or from exported cases");
        assertThat(folder.resolve("cases.mv.db")).hasSize(20_000);
    }

    @Test
    void a_folder_that_cannot_be_made() throws Exception {
        Path file = Files.createFile(folder.resolve("file"));

        try (CaseStore below = new CaseStore(StoreLocation.in(file.resolve("store")), Clock.systemUTC())) {
            assertThatThrownBy(() -> below.ids("", 1))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessage("case store " + file.resolve("store")
                            + ": the folder cannot be made; choose a folder that can be written to");
        }
        try (CaseStore itself = new CaseStore(StoreLocation.in(file), Clock.systemUTC())) {
            assertThatThrownBy(() -> itself.ids("", 1))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessageContaining("it is a file, not a folder")
                    .hasMessageContaining("--database");
        }
    }

    @Test
    void a_folder_that_may_only_be_read_is_read_and_not_written_to() {
        CaseHistory kept = openWithFindings();
        store.close();
        Disk only = new Disk() {
            @Override
            boolean isWritable(Path path) {
                return false;
            }
        };

        try (CaseStore reader = new CaseStore(StoreLocation.in(folder), Clock.systemUTC(), only)) {
            assertThat(reader.read(ID)).isEqualTo(kept);
            assertThat(reader.verifyStore().isWhole()).isTrue();
            assertThatThrownBy(() -> reader.append(ID, new NoteAdded("x"), "anna"))
                    .hasMessage("case store " + folder
                            + ": it may be read but not written to; choose a folder that can be written to");
        }
        assertThat(store.read(ID)).isEqualTo(kept);
    }

    @Test
    void a_password_or_user_that_the_database_does_not_admit() throws Exception {
        store.open(opened(ID, "t"), "anna");

        store.close();
        try (Connection connection = raw();
                var statement = connection.createStatement()) {
            statement.execute("alter user sa set password 'of somebody else'");
        }

        assertThatThrownBy(() -> store.ids("", 1))
                .isInstanceOf(StoreUnavailable.class)
                .hasMessage(
                        "case store " + folder + ": the database does not admit this user; check user and password");
    }

    @Test
    void a_database_that_cannot_be_reached() {
        String nobody = "jdbc:postgresql://127.0.0.1:1/cases?sslmode=disable";

        try (CaseStore away =
                new CaseStore(StoreLocation.of(Database.named("store", nobody, "u", "secret")), Clock.systemUTC())) {
            assertThatThrownBy(() -> away.ids("", 1))
                    .hasMessage("case store jdbc:postgresql://127.0.0.1:1/cases: the database cannot be reached;"
                            + " check that it runs, then repeat");
        }
    }

    /** Names under "invalid" never resolve: RFC 2606, section 2. */
    @Test
    void a_server_whose_name_nobody_knows() {
        String nobody = "jdbc:postgresql://shop.invalid/cases?sslmode=disable";

        try (CaseStore away =
                new CaseStore(StoreLocation.of(Database.named("store", nobody, "u", "secret")), Clock.systemUTC())) {
            assertThatThrownBy(() -> away.ids("", 1))
                    .hasMessage("case store jdbc:postgresql://shop.invalid/cases: no server of the name in its address"
                            + " is known here; check the name, and the network of this computer");
        }
    }

    @Test
    void an_address_in_the_place_of_a_file_is_not_said_again() {
        Path address = Path.of("jdbc:postgresql://db/cases?password=topsecret");

        for (Function<Path, StoreLocation> way : List.<Function<Path, StoreLocation>>of(
                StoreLocation::shared, StoreLocation::at, StoreLocation::existing)) {
            assertThatThrownBy(() -> way.apply(address))
                    .isInstanceOf(CaseRefused.class)
                    .hasMessage("store: a database is named by a file, not by its address; write lines url, user,"
                            + " password into a file of your own and give its path");
        }
    }

    /** 57P03 is cannot_connect_now in the PostgreSQL manual's table of error codes. */
    @Test
    void a_server_that_is_starting_up_is_waited_for() {
        SqlFault fault = SqlFault.of(new SQLException("FATAL: the database system is starting up", "57P03"));

        assertThat(fault.canBeTriedAgain()).isTrue();
        assertThat(fault.told("here")).hasMessageContaining("the server is starting up; wait a while, then repeat");
    }

    @Test
    void a_place_that_is_no_place() {
        assertThatThrownBy(() -> StoreLocation.in(Path.of("a;INIT=DROP ALL OBJECTS")))
                .isInstanceOf(CaseRefused.class);
        assertThatThrownBy(() -> StoreLocation.in(Path.of(""))).isInstanceOf(CaseRefused.class);
        assertThat(Database.named("store", "jdbc:postgresql://h/x", "u", "secret"))
                .hasToString("jdbc:postgresql://h/x as u");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "jdbc:postgresql:cases",
                "jdbc:postgresql://db.shop.example/cases",
                "jdbc:postgresql://db1:5432,db2:5433/cases_1",
                "jdbc:postgresql://[::1]:5432/cases",
                "jdbc:postgresql://db/cases?ssl=true&sslmode=verify-full&sslrootcert=/etc/ssl/shop.pem"
            })
    void an_address_of_host_name_and_tls_options_is_taken(String url) {
        assertThat(Database.named("store", url, "u", "p").shown()).isEqualTo(url.split("\\?")[0]);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "jdbc:other:hidden",
                "jdbc:h2:mem:x;INIT=RUNSCRIPT FROM 'hidden'",
                "jdbc:h2:file:/tmp/hidden",
                "jdbc:postgresql://u:hidden@db/cases",
                "jdbc:postgresql://db/cases?password=hidden",
                "jdbc:postgresql://db/cases?socketFactory=hidden",
                "jdbc:postgresql://db/cases?%73ocketFactory=hidden",
                "jdbc:postgresql://db/cases?ssl=true&sslfactory=hidden",
                "jdbc:postgresql://db/cases?sslmode=hid%64en",
                "jdbc:postgresql://db/cases?sslmode=prefer",
                "jdbc:postgresql://db/cases?sslmode=allow",
                "jdbc:postgresql://db/cases?ssl=false",
                "jdbc:postgresql://db/cases?",
                "jdbc:postgresql://db/a/hidden",
                "hidden"
            })
    void an_address_that_says_more_is_refused_without_showing_what(String url) {
        assertThatThrownBy(() -> Database.named("store", url, "u", "secret"))
                .isInstanceOf(CaseRefused.class)
                .hasMessageStartingWith("store: the database address ")
                .hasMessageNotContaining("hidden");
    }

    @Test
    void the_version_known_is_the_highest_migration() throws Exception {
        try (Stream<Path> files = Files.list(Path.of("src/main/resources/db/migration"))) {
            assertThat(files.map(f -> f.getFileName().toString().replaceAll("V(\\d+)__.*\\.sql", "$1"))
                            .mapToInt(Integer::parseInt)
                            .max())
                    .hasValue(Schema.VERSION);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "jdbc:postgresql://db/cases,jdbc:postgresql://db/cases?sslmode=verify-full",
        "jdbc:postgresql://db/cases?sslrootcert=/a.pem,jdbc:postgresql://db/cases?sslrootcert=/a.pem&sslmode=verify-full",
        "jdbc:postgresql://db/cases?sslmode=disable,jdbc:postgresql://db/cases?sslmode=disable",
        "jdbc:postgresql://db/cases?sslmode=require,jdbc:postgresql://db/cases?sslmode=require"
    })
    void the_line_is_encrypted_and_the_server_checked_unless_the_address_says_otherwise(String url, String meant) {
        assertThat(Database.named("store", url, "u", "p").url()).isEqualTo(meant);
    }
}
