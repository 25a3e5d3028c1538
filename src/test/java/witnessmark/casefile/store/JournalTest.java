package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.h2.store.fs.FileUtils;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.util.FileSystemUtils;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.Opened;
import witnessmark.gearbox.Layout;

/** Every entry lies in the journal too, and the database follows from it. */
class JournalTest {
    private static final CaseId ID = new CaseId("one");

    @TempDir
    Path folder;

    private CaseStore store;

    @BeforeEach
    void begin() {
        store = store();
        store.open(
                new Opened(ID, "t \"q\" \\ é \u2028 😀", "two\nlines\tand a tab", Vehicle.unknown(), Layout.unknown()),
                "Zoë \"x\"");
        store.appendAll(ID, List.of(new NoteAdded("first"), new NoteAdded("second")), "ben");
    }

    @AfterEach
    void end() {
        store.close();
    }

    private CaseStore store() {
        return new CaseStore(StoreLocation.in(folder), Clock.systemUTC());
    }

    private Path file() {
        return folder.resolve("journal/entries-000000000001.jsonl");
    }

    private void behindTheProgramsBack(String... statements) throws Exception {
        store.close();
        try (Connection connection = DriverManager.getConnection("jdbc:h2:file:" + folder.resolve("cases"), "sa", "");
                var statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    /** As if the database had lost its last change in a power cut. */
    private void loseTheLastChange() throws Exception {
        String hash = lines().get(0).get("lineHash").asString();
        String entry = lines().get(0).get("hash").asString();
        behindTheProgramsBack(
                "delete from case_entry where entry_number > 1",
                "update case_file set last_number = 1, changed_at = opened_at, last_hash = '" + entry + "'",
                "update store_head set last_line = 1, last_hash = '" + hash + "'");
    }

    private List<JsonNode> lines() throws Exception {
        ObjectMapper mapper = new ObjectMapper();
        return Stream.of(Files.readString(file()).split("\n"))
                .map(mapper::readTree)
                .toList();
    }

    @Test
    void a_database_that_holds_a_line_which_it_says_it_has_not_is_made_anew_from_the_journal() throws Exception {
        loseTheLastChange();
        behindTheProgramsBack("update case_entry set line_number = 2");
        store = store();

        assertThat(store.read(ID).present().notes()).containsExactly("first", "second");
        assertThat(store.verifyStore().isWhole()).isTrue();
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(f -> f.getFileName().toString())).anyMatch(name -> name.contains("before-rebuild"));
        }
    }

    /** The mark of a shell that has the store open, as a kill leaves it. */
    private void asKilled(String... statements) throws Exception {
        Path mark = folder.resolve("cases.open");
        store.read(ID);
        String run = Files.readAllLines(mark).get(0);
        behindTheProgramsBack(statements);
        Files.writeString(mark, run + "\n");
    }

    private long timesMadeAnew() throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(f -> f.toString().contains("before-rebuild")).count();
        }
    }

    @Test
    void rows_that_a_killed_shell_left_beyond_the_end_or_without_a_case_are_not_kept() throws Exception {
        var kept = store.read(ID);
        long times = 0;
        for (String stray : List.of(
                "update case_entry set line_number = 1044 where entry_number = 3",
                "insert into case_entry select case_no, 4, made_at, who, kind, body, previous_hash, hash, 4, line_hash"
                        + " from case_entry where entry_number = 3",
                "delete from case_entry")) {
            asKilled(stray);
            store = store();

            assertThat(store.read(ID)).as(stray).isEqualTo(kept);
            assertThat(store.verifyStore().isWhole()).isTrue();
            assertThat(timesMadeAnew()).isEqualTo(++times);
        }
    }

    @Test
    void a_change_that_a_killed_shell_had_in_the_journal_alone_is_taken_over_into_a_new_database() throws Exception {
        store.append(ID, new NoteAdded("third"), "ben");
        var kept = store.read(ID);
        String hash = lines().get(2).get("lineHash").asString();
        asKilled(
                "delete from case_entry where entry_number = 4",
                "update store_head set last_line = 3, last_hash = '" + hash + "'");
        store = store();

        assertThat(store.read(ID)).isEqualTo(kept);
        assertThat(timesMadeAnew()).isEqualTo(1);
    }

    @Test
    void a_store_whose_shell_was_killed_at_rest_is_not_made_anew() throws Exception {
        asKilled();
        store = store();

        assertThat(store.read(ID).present().notes()).containsExactly("first", "second");
        assertThat(timesMadeAnew()).isZero();
    }

    @Test
    void every_entry_is_one_line_of_json_with_its_hashes() throws Exception {
        List<JsonNode> lines = lines();

        assertThat(lines).hasSize(3);
        assertThat(lines.get(0).get("who").asString()).isEqualTo("Zoë \"x\"");
        assertThat(lines.get(0).get("change").get("complaint").asString()).isEqualTo("two\nlines\tand a tab");
        assertThat(lines.get(1).get("left").asLong()).isEqualTo(1);
        assertThat(lines.get(2).get("left").asLong()).isZero();
        assertThat(lines.get(2).get("before")).isEqualTo(lines.get(1).get("lineHash"));
        assertThat(lines.get(2).get("hash").asString())
                .isEqualTo(store.read(ID).last().hash());
    }

    @Test
    void what_the_database_does_not_know_is_taken_over_from_the_journal() throws Exception {
        var kept = store.read(ID);
        loseTheLastChange();

        try (CaseStore again = store()) {
            assertThat(again.read(ID)).isEqualTo(kept);
            assertThat(again.verifyAll()).isEmpty();
        }
    }

    @Test
    void a_change_cut_off_in_the_middle_is_left_out_whole_and_kept_aside() throws Exception {
        loseTheLastChange();
        byte[] whole = Files.readAllBytes(file());
        Files.write(file(), Arrays.copyOf(whole, whole.length - 20));

        try (CaseStore again = store()) {
            assertThat(again.read(ID).present().notes()).isEmpty();
            again.append(ID, new NoteAdded("third"), "ben");
        }

        assertThat(lines()).hasSize(2);
        assertThat(Files.readString(folder.resolve("journal/torn-after-line-000000000001.txt")))
                .contains("first", "\"line\":3");
    }

    @Test
    void a_database_that_is_gone_empty_or_damaged_is_made_anew() throws Exception {
        var kept = store.read(ID);
        Path database = folder.resolve("cases.mv.db");
        store.close();
        for (String damage : List.of("gone", "empty", "damaged", "cut to half")) {
            byte[] whole = Files.readAllBytes(database);
            switch (damage) {
                case "gone" -> Files.delete(database);
                case "empty" -> Files.write(database, new byte[0]);
                case "damaged" -> Files.writeString(database, "this is no database ".repeat(1_000));
                default -> Files.write(database, Arrays.copyOf(whole, 5_000));
            }
            try (CaseStore again = store()) {
                assertThatThrownBy(() -> again.ids("", 1))
                        .as(damage)
                        .isInstanceOf(StoreUnavailable.class)
                        .hasMessageEndingWith("make it anew with: store rebuild");

                Rebuilt made = again.rebuild();

                assertThat(made.cases()).isEqualTo(1);
                assertThat(made.head().lines()).isEqualTo(3);
                assertThat(made.setAside().isPresent()).isEqualTo(!damage.equals("gone"));
                assertThat(again.read(ID)).isEqualTo(kept);
                assertThat(again.verifyAll()).isEmpty();
            }
        }
    }

    /** The journal of a copy in which one more was kept, as a shell leaves it that was killed before the database knew. */
    private String journalWith(NoteAdded note) throws Exception {
        store.close();
        Path copy = folder.resolve("copy");
        FileSystemUtils.copyRecursively(folder.resolve("journal"), copy.resolve("journal"));
        Files.copy(folder.resolve("cases.mv.db"), copy.resolve("cases.mv.db"));
        try (CaseStore other = new CaseStore(StoreLocation.in(copy), Clock.systemUTC())) {
            other.append(ID, note, "ben");
        }
        return Files.readString(copy.resolve("journal").resolve(file().getFileName()));
    }

    @Test
    void what_another_shell_left_in_the_journal_alone_is_no_alarm_while_the_store_is_open() throws Exception {
        String journal = journalWith(new NoteAdded("third"));
        assertThat(store.read(ID).entries()).hasSize(3);
        Files.writeString(file(), journal);

        assertThat(store.verify(ID)).isEqualTo(new ChainCheck.Intact(4));

        assertThat(store.read(ID).present().notes()).containsExactly("first", "second", "third");
    }

    @Test
    void nor_is_it_where_the_whole_store_is_looked_over() throws Exception {
        String journal = journalWith(new NoteAdded("third"));
        assertThat(store.read(ID).entries()).hasSize(3);
        Files.writeString(file(), journal);

        assertThat(store.verifyStore().lines()).isEmpty();

        assertThat(store.head().lines()).isEqualTo(4);
    }

    @Test
    void a_case_that_another_shell_has_kept_meanwhile_is_not_called_taken_out_for_the_gap_of_another()
            throws Exception {
        store.open(new Opened(new CaseId("two"), "", "", Vehicle.unknown(), Layout.unknown()), "anna");
        store.open(new Opened(new CaseId("three"), "", "", Vehicle.unknown(), Layout.unknown()), "anna");
        behindTheProgramsBack(
                "delete from case_entry where line_number = 4",
                "update case_file set case_id = 'other' where case_id = 'two'");
        store = store();

        assertThat(store.takenOut(new CaseId("two"))).isPresent();
        assertThat(store.takenOut(new CaseId("three"))).isEmpty();
        assertThat(store.takenOut(new CaseId("four"))).isEmpty();
    }

    @Test
    void a_database_that_is_open_is_not_made_anew() {
        try (CaseStore other = store()) {
            assertThatThrownBy(other::rebuild)
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessageEndingWith("another shell has it open; close all shells, then repeat");
        }
    }

    @Test
    void a_journal_of_another_store_or_a_lost_one_is_refused_until_a_new_one_is_begun() throws Exception {
        store.close();
        Files.writeString(file(), Files.readString(file()).replace("first", "forst"));
        loseNothingButTheJournalsEnd();

        try (CaseStore again = store()) {
            assertThatThrownBy(() -> again.ids("", 1))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessageContaining("journal and database do not fit")
                    .hasMessageContaining("store journal");
            again.beginJournal();
            assertThat(again.read(ID).present().notes()).containsExactly("first", "second");
        }
        assertThat(lines()).hasSize(3);
    }

    private void loseNothingButTheJournalsEnd() throws Exception {
        byte[] whole = Files.readAllBytes(file());
        Files.write(file(), Arrays.copyOf(whole, whole.length - 20));
    }

    @Test
    void a_store_from_before_there_was_a_journal_gets_one() throws Exception {
        var kept = store.read(ID);
        behindTheProgramsBack(
                "drop table store_head",
                "drop index case_entry_line",
                "alter table case_entry drop column line_number",
                "alter table case_entry drop column line_hash",
                "delete from \"flyway_schema_history\" where \"version\" = '2'");
        FileUtils.deleteRecursive(folder.resolve("journal").toString(), false);

        try (CaseStore again = store()) {
            assertThat(again.read(ID)).isEqualTo(kept);
            again.append(ID, new NoteAdded("third"), "ben");
        }

        assertThat(lines()).hasSize(4);
    }

    @Test
    void what_the_database_refuses_does_not_stay_in_the_journal() throws Exception {
        assertThatThrownBy(() -> store.append(ID, new NoteAdded("x".repeat(20_001)), "ben"))
                .isInstanceOf(RuntimeException.class);

        assertThat(lines()).hasSize(3);
    }

    @Test
    void a_full_file_is_left_for_a_new_one_and_all_are_read() throws Exception {
        String text = "long ".repeat(3_900);
        // In changes of ten: each change reads the case again, so that single notes take ten times as long.
        for (int change = 0; change < 43; change++) {
            store.appendAll(
                    ID,
                    IntStream.range(10 * change, 10 * change + 10)
                            .mapToObj(i -> new NoteAdded(i + text))
                            .toList(),
                    "ben");
        }
        store.close();
        try (Stream<Path> files = Files.list(folder.resolve("journal"))) {
            assertThat(files.count()).isEqualTo(2);
        }
        Files.delete(folder.resolve("cases.mv.db"));

        try (CaseStore again = store()) {
            assertThat(again.rebuild().head().lines()).isEqualTo(433);
            assertThat(again.verifyAll()).isEmpty();
            again.append(ID, new NoteAdded("after"), "ben");
        }
    }

    @Test
    void what_is_appended_to_the_journal_by_hand_is_not_taken_for_an_entry() throws Exception {
        store.close();
        Files.writeString(file(), "{\"line\":4,\"left\":0}\n", UTF_8, StandardOpenOption.APPEND);

        try (CaseStore again = store()) {
            assertThat(again.read(ID).entries()).hasSize(3);
        }
        assertThat(folder.resolve("journal/torn-after-line-000000000003.txt")).isNotEmptyFile();
    }
}
