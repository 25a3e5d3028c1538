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
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.SignedOff;
import witnessmark.gearbox.Layout;

/** A store copied to another holds the same entries, numbers, hashes and files; a copy cut off is carried on. */
class StoreCopyTest {
    private static final CaseId ONE = new CaseId("one");
    private static final CaseId TWO = new CaseId("two");

    @TempDir
    Path folder;

    private CaseStore from;
    private CaseStore to;
    private Attachment picture;

    @BeforeEach
    void begin() {
        from = in("from");
        to = in("to");
        from.open(opened(ONE), "anna");
        from.open(opened(TWO), "ben");
        from.append(ONE, new NoteAdded("first"), "anna");
        picture = from.attach(TWO, "cone.jpg", "image/jpeg", "a picture".getBytes(UTF_8), "ben");
        from.append(ONE, new NoteAdded("second"), "anna");
        from.append(ONE, new SignedOff(), "carl");
        from.keepInterviewPlace(TWO, "checks; skipped teardown; turns 4");
    }

    @AfterEach
    void end() {
        from.close();
        to.close();
    }

    private CaseStore in(String name) {
        return new CaseStore(StoreLocation.in(folder.resolve(name)), Clock.systemUTC());
    }

    private static Opened opened(CaseId id) {
        return new Opened(id, "t", "", Vehicle.unknown(), Layout.unknown());
    }

    private Copied copy() {
        return from.copyTo(to, (done, all) -> {});
    }

    private void assertSame() {
        assertThat(to.head()).isEqualTo(from.head());
        assertThat(to.read(ONE)).isEqualTo(from.read(ONE));
        assertThat(to.read(TWO)).isEqualTo(from.read(TWO));
        assertThat(to.list(CaseQuery.all())).isEqualTo(from.list(CaseQuery.all()));
        assertThat(to.verifyStore().isWhole()).isTrue();
    }

    @Test
    void every_entry_and_file_comes_over_with_its_number_and_hash() {
        Copied copied = copy();

        assertThat(copied.entries()).isEqualTo(6);
        assertThat(copied.files()).isEqualTo(1);
        assertThat(copied.check().cases()).isEqualTo(2);
        assertThat(copied.missing()).isEmpty();
        assertSame();
        assertThat(to.readAttachment(TWO, picture)).isEqualTo("a picture".getBytes(UTF_8));
        assertThat(to.interviewPlace(TWO)).contains("checks; skipped teardown; turns 4");
    }

    @Test
    void a_copy_made_again_copies_what_is_new_and_nothing_twice() {
        copy();
        assertThat(copy().entries()).isZero();
        from.append(TWO, new NoteAdded("later"), "ben");
        from.open(opened(new CaseId("three")), "ben");

        assertThat(copy().entries()).isEqualTo(2);
        assertSame();
    }

    @Test
    void a_copy_cut_off_in_the_middle_is_carried_on() {
        List<StoreLine> lines = from.session().read(sql -> new StoreLines(sql).after(StoreHead.NONE));
        to.session().takeOver("from", StoreHead.NONE, lines.subList(0, 3));

        assertThat(copy().entries()).isEqualTo(3);
        assertSame();
    }

    @Test
    void a_file_that_a_cut_off_copy_left_behind_is_brought() throws Exception {
        copy();
        Files.delete(folder.resolve("to").resolve("attachments/two").resolve(picture.sha256()));

        assertThat(copy().files()).isEqualTo(1);
        assertThat(to.verifyFiles(TWO)).isEmpty();
    }

    @Test
    void a_file_that_is_lost_already_is_told_and_holds_up_nothing() throws Exception {
        Files.delete(folder.resolve("from").resolve("attachments/two").resolve(picture.sha256()));

        Copied copied = copy();

        assertThat(copied.entries()).isEqualTo(6);
        assertThat(copied.missing().get(TWO)).containsExactly("attachment 'cone.jpg' is missing");
    }

    @Test
    void a_store_with_entries_of_its_own_is_not_written_to() {
        to.open(opened(new CaseId("own")), "ben");

        assertThatThrownBy(this::copy)
                .isInstanceOf(StoreUnavailable.class)
                .hasMessageContaining(
                        "it holds entries that " + folder.resolve("from") + " does not: it ends with entry 1");
        assertThat(to.ids("", 9)).containsExactly(new CaseId("own"));
        to.close();
    }

    @Test
    void a_copy_that_was_worked_in_since_is_not_written_to() {
        copy();
        to.append(TWO, new NoteAdded("there"), "ben");
        from.append(TWO, new NoteAdded("here"), "ben");

        assertThatThrownBy(this::copy).hasMessageContaining("it holds entries that");
        assertThat(to.read(TWO).present().notes()).containsExactly("there");
    }

    @Test
    void somebody_who_writes_meanwhile_stops_it() {
        List<StoreLine> lines = from.session().read(sql -> new StoreLines(sql).after(StoreHead.NONE));
        to.open(opened(new CaseId("own")), "ben");

        assertThatThrownBy(() -> to.session().takeOver("from", StoreHead.NONE, lines))
                .hasMessageEndingWith(
                        "somebody else writes to it while it is copied to; let nobody work in it until the"
                                + " copy is made, then repeat");
        assertThat(to.verifyStore().isWhole()).isTrue();
    }

    @Test
    void a_store_that_is_not_whole_is_not_copied() throws Exception {
        from.close();
        try (Connection connection =
                        DriverManager.getConnection("jdbc:h2:file:" + folder.resolve("from/cases"), "sa", "");
                var statement = connection.createStatement()) {
            statement.executeUpdate("update case_entry set who = 'dora' where line_number = 3");
        }

        assertThatThrownBy(this::copy)
                .hasMessageContaining("it is not whole and is not copied")
                .hasMessageContaining("entry 2 is not as it was written");
        assertThat(folder.resolve("to")).doesNotExist();
    }

    @Test
    void a_place_without_a_store_is_not_made_one_to_copy_from() {
        assertThatThrownBy(() -> StoreLocation.existing(folder.resolve("nowhere")))
                .isInstanceOf(CaseRefused.class)
                .hasMessageStartingWith("store: there is none in '" + folder.resolve("nowhere") + "'");
        assertThat(folder.resolve("nowhere")).doesNotExist();
    }
}
