package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.SignedOff;
import witnessmark.casefile.history.Stamp;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.gearbox.Layout;

/** What was done to a store behind the program's back shows; and an import that ended in the middle can be made again. */
class StoreCheckTest {
    private static final CaseId ONE = new CaseId("one");
    private static final CaseId TWO = new CaseId("two");
    private static final byte[] PICTURE = "not really a picture".getBytes(UTF_8);

    @TempDir
    Path folder;

    private CaseStore store;
    private Attachment picture;

    @BeforeEach
    void begin() {
        store = store();
        store.open(opened(ONE), "anna");
        store.open(opened(TWO), "anna");
        store.append(TWO, new NoteAdded("n"), "anna");
        picture = store.attach(ONE, "cone.jpg", "image/jpeg", PICTURE, "anna");
        store.append(ONE, new SignedOff(), "ben");
    }

    @AfterEach
    void end() {
        store.close();
    }

    private CaseStore store() {
        return new CaseStore(StoreLocation.in(folder), Clock.systemUTC());
    }

    private static Opened opened(CaseId id) {
        return new Opened(id, "t", "", Vehicle.unknown(), Layout.unknown());
    }

    private void tamper(String... statements) throws Exception {
        store.close();
        try (Connection connection = DriverManager.getConnection("jdbc:h2:file:" + folder.resolve("cases"), "sa", "");
                var statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    private Path file() {
        return folder.resolve("attachments").resolve(ONE.text()).resolve(picture.sha256());
    }

    @Test
    void a_store_that_is_whole_says_how_much_it_holds_and_where_it_ends() {
        StoreCheck check = store.verifyStore();

        assertThat(check.isWhole()).isTrue();
        assertThat(check.cases()).isEqualTo(2);
        assertThat(check.attachments()).isEqualTo(1);
        assertThat(check.head().lines()).isEqualTo(5);
        assertThat(check.head()).isEqualTo(store.head());
        assertThat(store.verify(ONE)).isEqualTo(new ChainCheck.Intact(3));
    }

    @Test
    void a_picture_that_was_changed_or_taken_away_shows() throws Exception {
        Files.writeString(file(), "not really a Picture");
        assertThat(store.verifyFiles(ONE)).containsExactly("attachment 'cone.jpg' is not as it was put in");
        assertThat(store.verifyStore().files()).containsOnlyKeys(ONE);

        Files.delete(file());
        assertThat(store.verifyFiles(ONE)).containsExactly("attachment 'cone.jpg' is missing");
        assertThat(store.verifyStore().isWhole()).isFalse();
    }

    @Test
    void a_sign_off_taken_out_with_the_head_set_back_shows() throws Exception {
        String hash = store.read(ONE).entries().get(1).hash();
        tamper(
                "delete from case_entry where kind = 'signed-off'",
                "update case_file f set last_number = 2, signed_off_at = null, changed_at = (select made_at from case_entry e"
                        + " where e.case_no = f.case_no and entry_number = 2), last_hash = '" + hash
                        + "' where case_id = 'one'");

        assertThat(store.verify(ONE))
                .isEqualTo(new ChainCheck.Broken(3, "the journal ends with entry 3 of it, the database with entry 2"));
        assertThat(store.verifyStore().lines())
                .containsExactly("case 'one': entry 3 of the journal is not in the database as it was kept");
    }

    @Test
    void a_case_with_an_entry_cut_from_its_middle_takes_no_more_and_can_be_carried_on() throws Exception {
        tamper("delete from case_entry where entry_number = 2 and case_no ="
                + " (select case_no from case_file where case_id = 'one')");
        store = store();

        assertThat(store.verifyEntries(ONE)).isInstanceOf(ChainCheck.Broken.class);
        assertThatThrownBy(() -> store.append(ONE, new CorrectedAfterSignOff("late", new NoteAdded("x")), "anna"))
                .isInstanceOf(StoreUnavailable.class)
                .hasMessageContaining("THE CHAIN OF ENTRIES IS BROKEN: entry 2 is missing")
                .hasMessageContaining("case fork one");
        assertThat(store.readAsKept(ONE).entries()).hasSize(2);
    }

    @Test
    void an_entry_rewritten_in_the_table_is_not_read_as_good_but_can_be_carried_on() throws Exception {
        tamper("update case_entry set who = 'carl' where entry_number = 2 and case_no ="
                + " (select case_no from case_file where case_id = 'one')");
        store = store();

        assertThatThrownBy(() -> store.read(ONE)).isInstanceOf(StoreUnavailable.class);
        assertThatThrownBy(() -> store.append(ONE, new CorrectedAfterSignOff("late", new NoteAdded("x")), "anna"))
                .isInstanceOf(StoreUnavailable.class);
        assertThat(store.readAsKept(ONE).verify())
                .isEqualTo(new ChainCheck.Broken(2, "entry 2 is not as it was written"));
    }

    @Test
    void a_case_taken_out_whole_shows() throws Exception {
        tamper(
                "delete from case_entry where case_no = (select case_no from case_file where case_id = 'two')",
                "delete from case_text where case_no = (select case_no from case_file where case_id = 'two')",
                "delete from case_file where case_id = 'two'");

        assertThat(store.verify(TWO))
                .isEqualTo(new ChainCheck.Broken(1, "the journal ends with entry 2 of it, the database with entry 0"));
        assertThat(store.verifyStore().lines())
                .containsExactly(
                        "case 'two': 2 entries from 1 to 2 of the journal is not in the database as it was kept");
    }

    @Test
    void a_case_taken_out_shows_by_the_numbers_of_the_others_without_a_journal_too() throws Exception {
        tamper(
                "delete from case_entry where case_no = (select case_no from case_file where case_id = 'two')",
                "delete from case_text where case_no = (select case_no from case_file where case_id = 'two')",
                "delete from case_file where case_id = 'two'");
        store.beginJournal();

        assertThat(store.verifyStore().lines())
                .anyMatch(s -> s.startsWith("entries 2 to 3 of the store are missing")
                        || s.startsWith("the journal is not whole"));
    }

    @Test
    void an_entry_written_anew_with_its_case_chained_anew_shows() throws Exception {
        CaseHistory forged = CaseHistory.open(
                        opened(TWO), new Stamp(Clock.systemUTC().instant(), "anna"))
                .with(new NoteAdded("forged"), new Stamp(Clock.systemUTC().instant(), "anna"));
        tamper(
                "delete from case_entry where case_no = (select case_no from case_file where case_id = 'two')"
                        + " and entry_number = 2",
                "insert into case_entry select case_no, 2, made_at, who, 'note-added', body, hash, '"
                        + forged.last().hash() + "', 3, line_hash from case_entry"
                        + " where case_no = (select case_no from case_file where case_id = 'two')");

        assertThat(store.verifyStore().lines())
                .containsExactly("case 'two': entry 2 of the journal is not in the database as it was kept");
    }

    @Test
    void an_import_that_ended_before_its_files_is_completed_by_the_same_import() {
        CaseHistory history = CaseHistory.open(
                        opened(new CaseId("sent")), new Stamp(Clock.systemUTC().instant(), "clerk"))
                .with(new AttachmentAdded(picture), new Stamp(Clock.systemUTC().instant(), "clerk"));
        CaseDocument document = CaseDocument.of(history);
        store.importCase(document, "ben");
        assertThat(store.verifyFiles(history.id())).containsExactly("attachment 'cone.jpg' is missing");

        store.importCase(document, Map.of(picture.sha256(), PICTURE), "ben");

        assertThat(store.verifyFiles(history.id())).isEmpty();
        assertThat(store.read(history.id())).isEqualTo(history);
        assertThat(store.verifyStore().isWhole()).isTrue();
        store.append(history.id(), new NoteAdded("later"), "ben");
        assertThatThrownBy(() -> store.importCase(document, Map.of(), "ben"))
                .hasMessage("case 'sent' is in the store already; give it another id");
        assertThat(List.of(store.readAttachment(history.id(), picture))).containsExactly(PICTURE);
    }
}
