package witnessmark.casefile.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.Opened;
import witnessmark.gearbox.Layout;

/** What a store is made from, and what it is never made over. */
class FirstStartTest {
    /** As the migration tool writes it on H2 before it makes any table. */
    private static final String HISTORY = "create table \"flyway_schema_history\" (\"installed_rank\" int primary key,"
            + " \"version\" varchar(50), \"description\" varchar(200), \"type\" varchar(20), \"script\" varchar(1000),"
            + " \"checksum\" int, \"installed_by\" varchar(100), \"installed_on\" timestamp default current_timestamp,"
            + " \"execution_time\" int, \"success\" boolean) as select -1, null, 'made', 'TABLE', '', 0, 'sa',"
            + " current_timestamp, 0, true";

    @TempDir
    Path folder;

    private CaseStore store(Path at) {
        return new CaseStore(StoreLocation.in(at), Clock.systemUTC());
    }

    private static Opened opened(String id) {
        return new Opened(new CaseId(id), "", "", Vehicle.unknown(), Layout.unknown());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "create table case_file (case_no bigint)",
                "create table case_file (case_no bigint); create table case_text (case_no bigint)"
            })
    void half_made_tables_without_a_case_are_made_anew_and_kept_aside(String made) throws Exception {
        execute(HISTORY);
        execute(made);

        try (CaseStore store = store(folder)) {
            store.open(opened("first"), "anna");
        }

        try (CaseStore store = store(folder)) {
            assertThat(store.verifyAll()).isEmpty();
            assertThat(store.ids("", 10)).containsExactly(new CaseId("first"));
        }
        assertThat(names()).filteredOn(n -> n.startsWith("cases-half-made-")).hasSize(1);
    }

    @Test
    void a_file_without_tables_is_not_made_a_new_store() throws Exception {
        execute("create table gone (id int); drop table gone");
        byte[] before = Files.readAllBytes(folder.resolve("cases.mv.db"));

        try (CaseStore store = store(folder)) {
            assertThatThrownBy(() -> store.open(opened("first"), "anna"))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessageContaining("the database file is not empty but shows no tables");
        }
        assertThat(Files.size(folder.resolve("cases.mv.db"))).isGreaterThanOrEqualTo(before.length / 2);
    }

    @Test
    void a_file_cut_to_nothing_is_not_made_a_new_store() throws Exception {
        try (CaseStore store = store(folder)) {
            store.open(opened("first"), "anna");
        }
        Files.write(folder.resolve("cases.mv.db"), new byte[0]);

        try (CaseStore store = store(folder)) {
            assertThatThrownBy(() -> store.ids("", 1))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessageContaining("its file cases.mv.db is empty");
        }
        assertThat(folder.resolve("cases.mv.db")).isEmptyFile();
    }

    @Test
    void what_a_killed_first_start_left_is_cleared_away() throws Exception {
        Files.writeString(folder.resolve("making-1a2b.mv.db"), "half");

        try (CaseStore store = store(folder)) {
            store.open(opened("first"), "anna");
        }

        assertThat(names()).noneMatch(n -> n.startsWith("making-"));
    }

    @Test
    void a_folder_copied_while_a_shell_is_open_never_writes_to_the_original() throws Exception {
        Path original = folder.resolve("original");
        Path copy = folder.resolve("copy");
        try (CaseStore open = store(original)) {
            open.open(opened("first"), "anna");
            copy(original, copy);

            try (CaseStore copied = store(copy)) {
                assertThatThrownBy(() -> copied.open(opened("second"), "anna"))
                        .isInstanceOf(StoreUnavailable.class)
                        .hasMessageStartingWith(
                                "case store " + copy + ": its lock cases.lock.db leads to another store, " + original)
                        .hasMessageContaining("delete that lock");
                Files.delete(copy.resolve("cases.lock.db"));
                copied.open(opened("second"), "anna");
                assertThat(copied.ids("", 10)).hasSize(2);
            }
            assertThat(open.ids("", 10)).containsExactly(new CaseId("first"));
        }
    }

    @Test
    void what_is_kept_is_for_its_owner_only_also_in_a_folder_that_was_there() throws Exception {
        try (CaseStore store = store(folder)) {
            store.open(opened("first"), "anna");
            store.attach(new CaseId("first"), "a.txt", "text/plain", new byte[] {1}, "anna");

            try (Stream<Path> files = Files.walk(folder)) {
                files.filter(f -> !f.equals(folder))
                        .forEach(f -> assertThat(rights(f)).as(f.toString()).endsWith("------"));
            }
        }
    }

    private static String rights(Path path) {
        try {
            return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void execute(String sql) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:h2:file:" + folder.resolve("cases"), "sa", "");
                var statement = connection.createStatement()) {
            statement.execute(sql.isEmpty() ? "select 1" : sql);
        }
    }

    private static void copy(Path from, Path to) throws Exception {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(from.relativize(file)));
            }
        }
    }

    private List<String> names() throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).toList();
        }
    }
}
