package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.TextField;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.yaml.CaseDocument;

/** A store moves from a folder to a shared server and back, and a copy that is killed is carried on. */
@Tag("long")
@Timeout(value = 15, unit = TimeUnit.MINUTES)
class SharedStoreCopyTest {
    private static final CaseId FIRST = new CaseId("case-0");

    private static PostgresServer server;

    @TempDir
    Path folder;

    private Path shared;
    private String database;

    @BeforeAll
    static void start() throws Exception {
        server = PostgresServer.common();
    }

    @BeforeEach
    void begin() throws Exception {
        database = server.emptyStore();
        shared = PostgresServer.file(
                folder.resolve("shop"), server.url(database), PostgresServer.OWNER, PostgresServer.PASSWORD);
    }

    private Attachment filled(int cases) {
        try (CaseStore store = at(folder.resolve("from"))) {
            List<CaseDocument> documents = new ArrayList<>();
            for (int i = 0; i < cases; i++) {
                CaseSheet sheet = new CaseSheet(new CaseId("case-" + i)).text(TextField.TITLE, "Señal " + i + " µ");
                for (int f = 0; f < 6; f++) {
                    sheet.finding(new FindingEntry("finding-" + f, FindingState.values()[(i + f) % 3], "seen"));
                }
                documents.add(CaseDocument.of(sheet.toCaseFile()));
            }
            store.importAll(documents, "dora");
            Attachment kept = store.attach(FIRST, "cone.jpg", "image/jpeg", "a picture".getBytes(UTF_8), "emil");
            store.append(FIRST, new NoteAdded("added later"), "emil");
            return kept;
        }
    }

    private static CaseStore at(Path place) {
        return new CaseStore(StoreLocation.at(place), Clock.systemUTC());
    }

    @Test
    void there_and_back_every_entry_file_and_chain_is_the_same() {
        Attachment picture = filled(300);
        Path back = folder.resolve("back");

        try (CaseStore from = at(folder.resolve("from"));
                CaseStore between = at(shared);
                CaseStore to = at(back)) {
            Copied there = from.copyTo(between, (done, all) -> {});
            Copied home = between.copyTo(to, (done, all) -> {});

            assertThat(there.entries())
                    .isEqualTo(home.entries())
                    .isEqualTo(from.head().lines());
            assertThat(there.files()).isEqualTo(home.files()).isEqualTo(1);
            assertThat(to.head()).isEqualTo(between.head()).isEqualTo(from.head());
            assertThat(to.read(FIRST)).isEqualTo(between.read(FIRST)).isEqualTo(from.read(FIRST));
            assertThat(between.readAttachment(FIRST, picture)).isEqualTo("a picture".getBytes(UTF_8));
            assertThat(between.list(CaseQuery.all())).isEqualTo(from.list(CaseQuery.all()));
            assertThat(between.ids("case-2", 500)).isEqualTo(from.ids("case-2", 500));
            to.append(FIRST, new NoteAdded("goes on"), "emil");
            assertThat(to.verifyStore().isWhole()).isTrue();
        }
    }

    @Test
    void work_goes_on_at_the_server_after_a_copy_under_the_logins_own_names() {
        filled(3);
        try (CaseStore from = at(folder.resolve("from"));
                CaseStore owner = at(shared);
                CaseStore anna = new CaseStore(server.location(database, "anna"), Clock.systemUTC())) {
            from.copyTo(owner, (done, all) -> {});

            anna.append(FIRST, new NoteAdded("by anna"), "emil");

            assertThat(anna.read(FIRST).entries())
                    .extracting(e -> e.stamp().who())
                    .contains("dora", "emil", "anna");
            assertThat(anna.verifyStore().isWhole()).isTrue();
        }
    }

    @Test
    void a_login_that_is_not_the_owners_copies_nothing_in_the_names_of_others() {
        filled(3);
        try (CaseStore from = at(folder.resolve("from"));
                CaseStore anna = new CaseStore(server.location(database, "anna"), Clock.systemUTC())) {
            from.copyTo(anna, (done, all) -> {});
            from.append(FIRST, new NoteAdded("n"), "emil");

            assertThatThrownBy(() -> from.copyTo(anna, (done, all) -> {}))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessageContaining("this login may not do that")
                    .hasMessageContaining("an entry in the name of another");
        }
    }

    @Test
    void a_copy_killed_again_and_again_is_carried_on_to_its_end_in_both_directions() throws Exception {
        filled(1_000);
        int first = killedUntilDone(folder.resolve("from"), shared);
        int second = killedUntilDone(shared, folder.resolve("back"));
        System.out.println("copies killed: " + first + " there, " + second + " back");

        try (CaseStore from = at(folder.resolve("from"));
                CaseStore between = at(shared);
                CaseStore back = at(folder.resolve("back"))) {
            assertThat(between.head()).isEqualTo(from.head());
            assertThat(back.head()).isEqualTo(from.head());
            assertThat(between.verifyStore().isWhole()).isTrue();
            assertThat(back.verifyStore().isWhole()).isTrue();
            assertThat(back.read(FIRST)).isEqualTo(from.read(FIRST));
        }
    }

    /** How often it was killed before it was done; later by a third each time, so that it comes to an end. */
    private static int killedUntilDone(Path from, Path to) throws Exception {
        for (int kills = 0; ; kills++) {
            Process copying = CopyingProcess.start(from, to);
            if (copying.waitFor((long) (2_000 * Math.pow(1.35, kills)), TimeUnit.MILLISECONDS)) {
                assertThat(copying.exitValue()).isZero();
                return kills;
            }
            copying.destroyForcibly().waitFor();
        }
    }
}
