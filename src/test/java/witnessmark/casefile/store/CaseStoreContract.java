package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.FindingCleared;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.MeasurementCleared;
import witnessmark.casefile.history.MeasurementSet;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.SignedOff;
import witnessmark.casefile.history.TextSet;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.casefile.yaml.CaseWriter;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;

/** What every store of cases keeps to, in a folder and on a server that several shops share. */
abstract class CaseStoreContract {
    static final CaseId ID = new CaseId("grinds-into-low");
    static final FindingEntry BURNED = new FindingEntry("range-cone-low-burned", FindingState.PRESENT, "blue");
    static final FindingEntry SOUND = new FindingEntry("range-cone-low-burned", FindingState.ABSENT);
    static final Measurement PRESSURE = new Measurement(
            "range-regulator-pressure",
            3.1,
            Unit.BAR,
            Optional.of(new Limits(
                    OptionalDouble.of(3.9), OptionalDouble.of(4.3), Unit.BAR, "service manual of this unit")),
            "");

    private final AtomicLong minutes = new AtomicLong();
    CaseStore store;

    @BeforeEach
    void begin() throws Exception {
        store = store();
    }

    @AfterEach
    void end() {
        store.close();
    }

    /** Where the store lies; the same in one test, and empty at its begin. */
    abstract StoreLocation location() throws Exception;

    /** Another place of the same kind, empty. */
    abstract StoreLocation elsewhere() throws Exception;

    /** A place where the tables of something else lie. */
    abstract StoreLocation ofSomethingElse() throws Exception;

    /** The version of the tables there. */
    abstract int version();

    /** Overwrites the kept bytes of a file, or takes them away where there are none to write. */
    abstract void damage(Attachment attachment, byte[] bytes) throws Exception;

    /** How many times a writer writes where many write at once. */
    abstract int often();

    /** The database with all rights, behind the program's back. */
    abstract Connection raw() throws Exception;

    /** A clock that moves on by a minute with every look. */
    CaseStore store() throws Exception {
        Instant start = Instant.parse("2026-03-02T08:00:00Z");
        InstantSource ticking = () -> start.plus(Duration.ofMinutes(minutes.getAndIncrement()));
        return new CaseStore(location(), ticking.withZone(ZoneOffset.UTC));
    }

    static Opened opened(CaseId id, String title) {
        return new Opened(id, title, "Hangs, then bangs home", Vehicle.named("Tractor 14"), Layout.unknown());
    }

    CaseHistory openWithFindings() {
        store.open(opened(ID, "Grinds into low"), "anna");
        return store.appendAll(ID, List.of(new FindingSet(BURNED), new MeasurementSet(PRESSURE)), "anna");
    }

    /** Changes the tables behind the program's back. */
    void tamper(String sql) throws Exception {
        store.close();
        try (Connection connection = raw();
                var statement = connection.createStatement()) {
            assertThat(statement.executeUpdate(sql)).isPositive();
        }
    }

    @Test
    void the_place_of_an_interview_stays_beside_the_case() {
        CaseHistory before = store.open(opened(ID, "Grinds into low"), "anna");
        store.keepInterviewPlace(ID, "kilometres");
        store.keepInterviewPlace(ID, "checks; skipped teardown");

        store.close();

        assertThat(store.interviewPlace(ID)).contains("checks; skipped teardown");
        assertThat(store.interviewPlace(new CaseId("another"))).isEmpty();
        assertThat(store.read(ID)).isEqualTo(before);
        assertThatThrownBy(() -> store.keepInterviewPlace(ID, "x".repeat(5_000)))
                .isInstanceOf(CaseRefused.class)
                .hasMessageContaining("5000 characters");
    }

    @Test
    void a_case_comes_back_as_it_was_kept() throws Exception {
        CaseHistory kept = openWithFindings();
        store.close();

        CaseHistory read = store().read(ID);

        assertThat(read).isEqualTo(kept);
        assertThat(read.present()).isEqualTo(kept.present());
        assertThat(read.entries().get(2).stamp().time()).isEqualTo(Instant.parse("2026-03-02T08:01:00Z"));
        assertThat(store.verify(ID)).isEqualTo(new ChainCheck.Intact(3));
    }

    @Test
    void the_searchable_state_follows_every_change() {
        openWithFindings();
        CaseQuery burned = CaseQuery.all().withFinding(BURNED.finding(), FindingState.PRESENT);
        CaseQuery sound = CaseQuery.all().withFinding(BURNED.finding(), FindingState.ABSENT);

        assertThat(store.count(burned)).isEqualTo(1);
        store.append(ID, new FindingSet(SOUND), "anna");
        assertThat(store.count(burned)).isZero();
        assertThat(store.count(sound)).isEqualTo(1);
        store.append(ID, new FindingCleared(SOUND.finding()), "anna");
        store.append(ID, new MeasurementCleared(PRESSURE.measure()), "anna");
        store.append(ID, new TextSet(TextField.TITLE, "Slow into low"), "anna");

        assertThat(store.count(sound)).isZero();
        assertThat(store.count(CaseQuery.all().withText("slow"))).isEqualTo(1);
        assertThat(store.count(CaseQuery.all().withText("grinds tractor"))).isEqualTo(1);
        assertThat(store.verify(ID)).isEqualTo(new ChainCheck.Intact(7));
    }

    @Test
    void lists_give_what_was_opened_last_first_in_pages() {
        for (int i = 0; i < 5; i++) {
            store.open(opened(new CaseId("case-" + i), i % 2 == 0 ? "Slips out" : "100% _grinds_"), "anna");
        }
        store.append(new CaseId("case-1"), new SignedOff(), "ben");

        assertThat(store.list(CaseQuery.all().withPage(3, 1)))
                .extracting(s -> s.id().text())
                .containsExactly("case-3", "case-2", "case-1");
        assertThat(store.list(CaseQuery.all().after(new CaseId("case-3")).withPage(2, 1)))
                .extracting(s -> s.id().text())
                .containsExactly("case-1", "case-0");
        assertThat(store.list(CaseQuery.all().turnedRound().withPage(2, 0)))
                .extracting(s -> s.id().text())
                .containsExactly("case-0", "case-1");
        assertThat(store.list(CaseQuery.all().turnedRound().withText("slips").after(new CaseId("case-0"))))
                .extracting(s -> s.id().text())
                .containsExactly("case-2", "case-4");
        assertThat(store.list(CaseQuery.all().after(new CaseId("case-0")))).isEmpty();
        assertThat(store.list(CaseQuery.all().withText("SLIPS tractor")))
                .extracting(s -> s.id().text())
                .containsExactly("case-4", "case-2", "case-0");
        assertThat(store.count(CaseQuery.all().withText("% _"))).isEqualTo(2);
        assertThat(store.count(CaseQuery.all().withText("'; drop table case_file; --")))
                .isZero();
        assertThat(store.list(CaseQuery.all().closedOnly()))
                .containsExactly(new CaseSummary(
                        new CaseId("case-1"),
                        "100% _grinds_",
                        "Tractor 14",
                        Instant.parse("2026-03-02T08:01:00Z"),
                        Instant.parse("2026-03-02T08:05:00Z"),
                        Optional.of(Instant.parse("2026-03-02T08:05:00Z")),
                        2));
        assertThat(store.list(CaseQuery.all().openOnly().withText("grinds")))
                .extracting(s -> s.id().text())
                .containsExactly("case-3");
        assertThat(store.ids("case-", 2)).extracting(CaseId::text).containsExactly("case-0", "case-1");
        assertThat(store.ids("%", 2)).isEmpty();
    }

    @Test
    void one_or_two_letters_are_found_where_a_word_begins() {
        store.open(opened(new CaseId("case-1"), "Out of 5th, T4 in reach"), "anna");
        store.open(opened(new CaseId("case-2"), "Grinds-in cold"), "anna");

        assertThat(found("t4")).containsExactly("case-1");
        assertThat(found("ou")).containsExactly("case-1");
        assertThat(found("in")).containsExactly("case-2", "case-1");
        assertThat(found("1")).containsExactly("case-2", "case-1");
        assertThat(found("ut")).isEmpty();
        assertThat(found("_")).isEmpty();
        assertThat(found("rind")).containsExactly("case-2");
    }

    @Test
    void one_or_two_letters_that_only_old_cases_have_are_found_behind_those_walked_and_in_order() throws Exception {
        for (int i = 0; i < 70; i++) {
            boolean marked = i < 45 && i % 3 == 0;
            store.open(opened(new CaseId("case-%02d".formatted(i)), marked ? "Grinds in t4" : "Grinds"), "anna");
        }
        store.append(new CaseId("case-42"), new SignedOff(), "anna");
        store.close();
        CaseQuery marked = CaseQuery.all().withText("t4");
        try (Connection connection = raw()) {
            // twenty for each case of a page are walked, so these are behind them
            CaseSearch search = new CaseSearch(new JdbcTemplate(new SingleConnectionDataSource(connection, true)), 0);

            assertThat(ids(search.list(marked.withPage(1, 0)))).containsExactly("case-42");
            assertThat(ids(search.list(marked.withPage(1, 1)))).containsExactly("case-39");
            assertThat(ids(search.list(marked.withPage(2, 0).openOnly()))).containsExactly("case-39", "case-36");
            assertThat(ids(search.list(marked.withPage(2, 0).after(new CaseId("case-40")))))
                    .containsExactly("case-39", "case-36");
            assertThat(ids(search.list(
                            marked.withPage(1, 0).after(new CaseId("case-03")).turnedRound())))
                    .containsExactly("case-06");
            assertThat(ids(search.list(marked.withText("in t4").withPage(3, 13))))
                    .containsExactly("case-03", "case-00");
            assertThat(search.list(marked.withText("qb").withPage(1, 0))).isEmpty();
            assertThat(search.countUpTo(4, marked)).isEqualTo(4);
            assertThat(search.count(marked)).isEqualTo(15);
        }
    }

    private static List<String> ids(List<CaseSummary> cases) {
        return cases.stream().map(s -> s.id().text()).toList();
    }

    private List<String> found(String words) {
        return store.list(CaseQuery.all().withText(words)).stream()
                .map(s -> s.id().text())
                .toList();
    }

    @Test
    void findings_words_and_closing_narrow_a_list_together() {
        FindingEntry hops = new FindingEntry("lever-hops", FindingState.ABSENT);
        for (int i = 0; i < 6; i++) {
            CaseId id = new CaseId("case-" + i);
            store.open(opened(id, i % 2 == 0 ? "Slips out" : "Grinds"), "anna");
            store.append(id, new FindingSet(i < 5 ? BURNED : SOUND), "anna");
            if (i > 1) {
                store.append(id, new FindingSet(hops), "anna");
            }
        }
        store.append(new CaseId("case-4"), new SignedOff(), "anna");
        CaseQuery both =
                CaseQuery.all().withFinding(BURNED.finding(), BURNED.state()).withFinding(hops.finding(), hops.state());

        assertThat(store.list(both)).extracting(s -> s.id().text()).containsExactly("case-4", "case-3", "case-2");
        assertThat(store.list(both.withText("slips")))
                .extracting(s -> s.id().text())
                .containsExactly("case-4", "case-2");
        assertThat(store.list(both.withText("slips").openOnly()))
                .extracting(s -> s.id().text())
                .containsExactly("case-2");
        assertThat(store.count(both.withPage(1, 1))).isEqualTo(3);
        assertThat(store.countUpTo(2, both)).isEqualTo(2);
        assertThat(store.countUpTo(9, both.withText("slips"))).isEqualTo(2);
    }

    @Test
    void a_change_made_on_what_another_has_changed_is_told_and_not_made() throws Exception {
        CaseHistory seen = openWithFindings();
        try (CaseStore other = store()) {
            other.append(ID, new FindingSet(SOUND), "ben");
        }

        assertThatThrownBy(() -> store.appendAfter(seen, List.of(new SignedOff()), "anna"))
                .isInstanceOf(CaseChangedMeanwhile.class)
                .hasMessage("case 'grinds-into-low' was changed meanwhile: entry 3 was the last one seen, now it is 4;"
                        + " read it again and repeat the change");
        assertThat(store.appendAfter(store.read(ID), List.of(new SignedOff()), "anna")
                        .present()
                        .isSignedOff())
                .isTrue();
    }

    @Test
    void a_simple_change_is_made_on_the_case_as_it_stands_for_all() throws Exception {
        openWithFindings();
        try (CaseStore other = store()) {
            other.append(ID, new FindingSet(SOUND), "ben");
        }

        CaseHistory now = store.append(ID, new FindingSet(BURNED), "anna");

        assertThat(now.last().change()).isEqualTo(new FindingSet(Optional.of(SOUND), BURNED));
    }

    @Test
    void changes_go_in_together_or_not_at_all() {
        CaseHistory before = openWithFindings();

        assertThatThrownBy(() ->
                        store.appendAll(ID, List.of(new NoteAdded("first"), new FindingCleared("lever-hops")), "anna"))
                .isInstanceOf(CaseRefused.class);

        assertThat(store.read(ID)).isEqualTo(before);
        assertThat(store.verify(ID)).isEqualTo(new ChainCheck.Intact(3));
    }

    @Test
    void an_exported_case_goes_into_another_store_with_its_history() throws Exception {
        openWithFindings();
        store.append(ID, new SignedOff(), "ben");
        CaseHistory given =
                store.append(ID, new CorrectedAfterSignOff("typing error", new NoteAdded("4.1 bar")), "ben");
        byte[] file = new CaseWriter().write(store.export(ID)).getBytes(UTF_8);

        try (CaseStore other = new CaseStore(elsewhere(), Clock.systemUTC())) {
            CaseDocument document = new CaseReader().read("case.yaml", file);
            other.importCase(document, "clerk");
            CaseHistory renamed = other.importAs(new CaseId("second"), document, "clerk");

            assertThat(other.read(ID)).isEqualTo(given);
            assertThat(other.verifyAll()).isEmpty();
            assertThat(renamed.present().isSignedOff()).isFalse();
            assertThat(renamed.present().notes())
                    .containsExactly(
                            "4.1 bar",
                            "Taken over from case 'grinds-into-low', entry 5, hash "
                                    + given.last().hash());
            assertThatThrownBy(() -> other.importCase(document, "clerk"))
                    .hasMessage("case 'grinds-into-low' is in the store already; give it another id");
        }
    }

    @Test
    void a_case_written_by_hand_is_kept_as_entered_now() {
        CaseDocument document = CaseDocument.of(new CaseSheet(ID)
                .text(TextField.TITLE, "Slips")
                .text(TextField.WORK_DONE, "none")
                .finding(BURNED)
                .measurement(PRESSURE)
                .note("n")
                .toCaseFile());

        CaseHistory kept = store.importCase(document, "clerk");

        assertThat(kept.present()).isEqualTo(document.present());
        assertThat(store.read(ID)).isEqualTo(kept);
    }

    @Test
    void many_cases_go_in_together_or_not_at_all() {
        CaseDocument one = CaseDocument.of(new CaseSheet(new CaseId("one")).toCaseFile());
        CaseDocument two =
                CaseDocument.of(new CaseSheet(new CaseId("two")).finding(BURNED).toCaseFile());
        store.importAll(List.of(one), "clerk");

        assertThatThrownBy(() -> store.importAll(List.of(two, one), "clerk"))
                .hasMessage("case 'one' is in the store already; give it another id");

        assertThat(store.ids("", 10)).containsExactly(new CaseId("one"));
    }

    @Nested
    class Tampering {
        @ParameterizedTest
        @CsvSource(
                delimiter = '|',
                quoteCharacter = '"',
                textBlock =
                        """
            update case_entry set body = replace(body, 'blue', 'bleu') where entry_number = 2 | 2 | entry 2 is not as it was written
            update case_entry set body = concat(body, ' ') where entry_number = 3               | 3 | entry 3 is not as it was written
            update case_entry set who = 'ben' where entry_number = 2                           | 2 | entry 2 is not as it was written
            update case_entry set who = ' ' where entry_number = 2                             | 2 | entry 2 is not as it was written
            update case_entry set made_at = timestamp '2020-01-01 00:00:00+00:00' where entry_number = 1 | 1 | entry 1 is not as it was written
            update case_entry set hash = previous_hash where entry_number = 3                  | 3 | entry 3 is not as it was written
            update case_entry set previous_hash = hash where entry_number = 2                  | 2 | entry 2 does not follow from the one before it
            update case_entry set entry_number = 9 where entry_number = 2                      | 2 | entry 2 is missing; entry 3 stands in its place
            delete from case_entry where entry_number = 2                                      | 2 | entry 2 is missing; entry 3 stands in its place
            delete from case_entry where entry_number = 3                                      | 3 | the case should end with entry 3, the entries end with 2
            delete from case_entry                                                             | 1 | the case should end with entry 3, the entries end with 0
            update case_file set last_number = 2                                               | 3 | the case should end with entry 2, the entries end with 3
            update case_file set title = 'Grinds into high'                                    | 3 | the tables that are searched do not say what the entries say
            update case_file set signed_off_at = changed_at                                    | 3 | the tables that are searched do not say what the entries say
            update case_finding set state = 'absent'                                           | 3 | the tables that are searched do not say what the entries say
            update case_measurement set reading = 3.2                                          | 3 | the tables that are searched do not say what the entries say
            delete from case_finding                                                           | 3 | the tables that are searched do not say what the entries say
            """)
        void a_change_behind_the_programs_back_names_the_entry(String sql, long entry, String why) throws Exception {
            openWithFindings();

            tamper(sql);

            assertThat(store.verify(ID)).isEqualTo(new ChainCheck.Broken(entry, why));
            assertThat(store.verifyAll()).isEqualTo(Map.of(ID, new ChainCheck.Broken(entry, why)));
        }

        @Test
        void an_entry_that_cannot_be_read_is_told_in_one_line() throws Exception {
            openWithFindings();
            tamper("update case_entry set body = '{\"kind\":\"finding-set\"' where entry_number = 2");

            try (CaseStore fresh = store()) {
                assertThatThrownBy(() -> fresh.read(ID))
                        .isInstanceOf(StoreUnavailable.class)
                        .hasMessageStartingWith("case store " + location().shown()
                                + ": case 'grinds-into-low': THE CHAIN OF ENTRIES IS BROKEN: entry 2 is not as it was"
                                + " written; bring it back from a copy of the store or from an exported case");
            }
        }
    }

    @Nested
    class Attachments {
        final byte[] picture = "not really a picture".getBytes(UTF_8);

        @Test
        void bytes_come_back_as_they_were_put_in() {
            store.open(opened(ID, "t"), "anna");

            Attachment kept = store.attach(ID, "cone low.jpg", "image/jpeg", picture, "anna");

            assertThat(store.read(ID).present().attachments()).containsExactly(kept);
            assertThat(store.readAttachment(ID, kept)).isEqualTo(picture);
        }

        @Test
        void bytes_that_were_changed_or_lost_are_told_and_can_be_put_in_again() throws Exception {
            store.open(opened(ID, "t"), "anna");
            Attachment kept = store.attach(ID, "cone.jpg", "image/jpeg", picture, "anna");

            damage(kept, "not really a Picture".getBytes(UTF_8));
            assertThatThrownBy(() -> store.readAttachment(ID, kept))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessageEndingWith(
                            ": attachment 'cone.jpg' is not as it was put in; put the same file in again");
            assertThat(store.verifyStore().files()).containsOnlyKeys(ID);
            damage(kept, new byte[0]);
            assertThatThrownBy(() -> store.readAttachment(ID, kept)).hasMessageContaining("'cone.jpg' is missing");
            store.attach(ID, "cone.jpg", "image/jpeg", picture, "anna");

            assertThat(store.readAttachment(ID, kept)).isEqualTo(picture);
            assertThat(store.read(ID).entries()).hasSize(2);
            assertThat(store.verifyStore().isWhole()).isTrue();
        }

        @ParameterizedTest
        @CsvSource({"../../cone.jpg", "/etc/cone.jpg", "..", "a\\b"})
        void a_name_that_is_a_path_is_refused(String name) {
            store.open(opened(ID, "t"), "anna");

            assertThatThrownBy(() -> store.attach(ID, name, "image/jpeg", picture, "anna"))
                    .isInstanceOf(CaseRefused.class)
                    .hasMessage("attachment: '" + name + "' is not a file name; give the name without its folder");
        }
    }

    @Nested
    class Refusals {
        @Test
        void a_store_written_by_a_newer_version() throws Exception {
            store.open(opened(ID, "t"), "anna");
            tamper("insert into \"flyway_schema_history\" select 99, '99', 'later', 'SQL', 'V99__later.sql', 0, 'x',"
                    + " current_timestamp, 0, true");

            assertThatThrownBy(() -> store.read(ID))
                    .isInstanceOf(StoreUnavailable.class)
                    .hasMessage("case store " + location().shown()
                            + ": it was written by a newer version of the program (tables of"
                            + " version 99, this one knows " + version() + "); use the newer program");
        }

        @Test
        void a_database_of_something_else() throws Exception {
            try (CaseStore foreign = new CaseStore(ofSomethingElse(), Clock.systemUTC())) {
                assertThatThrownBy(() -> foreign.ids("", 1))
                        .isInstanceOf(StoreUnavailable.class)
                        .hasMessageEndingWith(": the database holds tables of something else;"
                                + " give the store a folder or database of its own");
            }
        }

        @Test
        void a_case_that_is_not_there_or_there_already() {
            store.open(opened(ID, "t"), "anna");

            assertThatThrownBy(() -> store.open(opened(ID, "t"), "anna"))
                    .hasMessage("case 'grinds-into-low' is in the store already; give it another id");
            assertThatThrownBy(() -> store.read(new CaseId("other")))
                    .hasMessage("case 'other' is not in the store; list the cases to see which are");
            assertThatThrownBy(() -> store.append(new CaseId("other"), new NoteAdded("x"), "anna"))
                    .hasMessage("case 'other' is not in the store; list the cases to see which are");
            assertThatThrownBy(() -> store.verify(new CaseId("other"))).isInstanceOf(CaseRefused.class);
        }
    }

    @Test
    void eight_writers_at_once_lose_nothing_of_each_other() throws Exception {
        store.open(opened(ID, "t"), "anna");
        List<Callable<CaseHistory>> writers = IntStream.range(0, 8)
                .<Callable<CaseHistory>>mapToObj(w -> () -> {
                    try (CaseStore own = new CaseStore(location(), Clock.systemUTC())) {
                        own.open(opened(new CaseId("of-writer-" + w), "t"), "anna");
                        for (int i = 0; i < often(); i++) {
                            own.append(ID, new NoteAdded(w + " " + i), "anna");
                        }
                        return own.append(new CaseId("of-writer-" + (w + 1) % 8), new NoteAdded("of another"), "anna");
                    } catch (CaseRefused e) {
                        // the neighbour has not opened its case yet
                        return store.read(ID);
                    }
                })
                .toList();

        ExecutorService threads = Executors.newFixedThreadPool(8);
        for (Future<CaseHistory> written : threads.invokeAll(writers)) {
            written.get();
        }
        threads.shutdown();

        List<String> notes = store.read(ID).present().notes();
        assertThat(notes).hasSize(8 * often()).doesNotHaveDuplicates();
        for (int w = 0; w < 8; w++) {
            String who = w + " ";
            assertThat(notes.stream().filter(n -> n.startsWith(who)))
                    .containsExactlyElementsOf(
                            IntStream.range(0, often()).mapToObj(i -> who + i).toList());
        }
        StoreCheck check = store.verifyStore();
        assertThat(check.isWhole()).as(check.toString()).isTrue();
        assertThat(check.cases()).isEqualTo(9);
    }

    @Test
    void a_store_is_looked_over_while_others_write_to_it_and_found_whole() throws Exception {
        store.open(opened(ID, "t"), "anna");
        AtomicBoolean enough = new AtomicBoolean();
        ExecutorService threads = Executors.newFixedThreadPool(2);
        List<Future<?>> writing = new ArrayList<>();
        for (int w = 0; w < 2; w++) {
            writing.add(threads.submit(() -> {
                try (CaseStore own = new CaseStore(location(), Clock.systemUTC())) {
                    while (!enough.get()) {
                        own.append(ID, new NoteAdded("n"), "anna");
                    }
                }
                return null;
            }));
        }

        for (int i = 0; i < often(); i++) {
            StoreCheck check = store.verifyStore();
            assertThat(check.isWhole()).as(check.toString()).isTrue();
            assertThat(store.verify(ID)).isInstanceOf(ChainCheck.Intact.class);
        }
        enough.set(true);
        for (Future<?> written : writing) {
            written.get();
        }
        threads.shutdown();
    }

    @Test
    void entries_taken_out_with_the_head_of_their_case_set_back_show_in_the_chain_over_all() throws Exception {
        openWithFindings();
        store.open(opened(new CaseId("later"), "t"), "anna");
        String before = store.read(ID).entries().get(1).hash();

        tamper("delete from case_entry where entry_number = 3");
        tamper("update case_file set last_number = 2, last_hash = '" + before + "' where case_id = '" + ID + "'");
        tamper("delete from case_measurement");

        assertThat(store.verifyStore().isWhole()).isFalse();
        assertThat(store.verifyStore().lines()).isNotEmpty();
    }
}
