package witnessmark.casefile.history;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.casefile.CaseArbitraries;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.gearbox.Layout;

class CaseHistoryTest {
    private static final Stamp MORNING = new Stamp(Instant.parse("2026-03-02T08:15:00Z"), "anna");
    private static final Stamp NOON = new Stamp(Instant.parse("2026-03-02T12:00:00.123456789Z"), "ben");
    private static final FindingEntry BURNED = new FindingEntry("range-cone-low-burned", FindingState.PRESENT);
    private static final FindingEntry SOUND =
            new FindingEntry("range-cone-low-burned", FindingState.ABSENT, "low cone");

    private static CaseHistory opened() {
        return CaseHistory.open(
                new Opened(
                        new CaseId("grinds-into-low"),
                        "Grinds",
                        "Grinds into low",
                        Vehicle.named("Tractor 14"),
                        Layout.unknown()),
                MORNING);
    }

    /** FIPS 180-4 examples of NIST (message of one block, of two blocks, empty); given from memory, recomputed with sha256sum. */
    @ParameterizedTest
    @CsvSource({
        "'', e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "abc, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq,"
                + " 248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"
    })
    void the_hash_is_the_published_sha_256(String message, String hash) {
        assertThat(CanonicalText.sha256(message.getBytes(US_ASCII))).isEqualTo(hash);
    }

    /** The five lines of the entry were written to a file by hand and hashed with sha256sum. */
    @Test
    void the_hash_of_an_entry_can_be_worked_out_without_the_program() {
        Entry entry =
                Entry.after(0, CanonicalText.NO_HASH, MORNING, new NoteAdded("Cone \"blue\"\nto the edge, 4\u00b5m"));

        assertThat(CanonicalText.of(entry.change()))
                .isEqualTo("{\"kind\":\"note-added\",\"note\":\"Cone \\\"blue\\\"\\nto the edge, 4\u00b5m\"}");
        assertThat(entry.hash()).isEqualTo("926ae8d20f31db2c5d4662d36d3ade8f2cbe41a21369ebcae695d4000388e67f");
    }

    @Test
    void the_present_state_is_what_the_entries_come_to() {
        CaseHistory history = opened().with(new FindingSet(BURNED), MORNING)
                .with(new TextSet(TextField.WORK_DONE, "Both cones replaced"), NOON)
                .with(new FindingSet(SOUND), NOON);

        assertThat(history.present().findings().values()).containsExactly(SOUND);
        assertThat(history.present().workDone()).isEqualTo("Both cones replaced");
        assertThat(history.present().complaint()).isEqualTo("Grinds into low");
        assertThat(history.verify()).isEqualTo(new ChainCheck.Intact(4));
    }

    @Test
    void a_change_remembers_what_stood_before() {
        CaseHistory history = opened().with(
                        List.of(new FindingSet(BURNED), new FindingSet(SOUND), new FindingCleared(SOUND.finding())),
                        NOON);

        assertThat(history.entries().get(2).change()).isEqualTo(new FindingSet(Optional.of(BURNED), SOUND));
        assertThat(history.last().change()).isEqualTo(new FindingCleared(SOUND.finding(), Optional.of(SOUND)));
        assertThat(history.present().findings()).isEmpty();
    }

    @Test
    void time_is_kept_to_the_millisecond_so_that_every_store_gives_it_back() {
        assertThat(CanonicalText.of(NOON.time())).isEqualTo("2026-03-02T12:00:00.123Z");
    }

    @Property(tries = 100)
    void any_history_verifies_and_a_shorter_one_is_its_beginning(@ForAll("changes") List<Change> changes) {
        CaseHistory whole = opened().with(changes, NOON);

        assertThat(whole.verify()).isEqualTo(new ChainCheck.Intact(changes.size() + 1L));
        assertThat(CaseHistory.of(whole.entries()).present()).isEqualTo(whole.present());
    }

    @Property(tries = 100)
    void an_entry_taken_out_exchanged_or_rewritten_shows(
            @ForAll("changes") List<Change> changes, @ForAll("place") int place) {
        CaseHistory whole = opened().with(changes, NOON);
        int at = 1 + place % changes.size();
        Entry original = whole.entries().get(at);
        List<Entry> rewritten = new ArrayList<>(whole.entries());
        rewritten.set(
                at,
                new Entry(
                        original.number(),
                        original.stamp(),
                        new NoteAdded("other"),
                        original.previousHash(),
                        original.hash()));
        List<Entry> otherHand = new ArrayList<>(whole.entries());
        otherHand.set(
                at, new Entry(original.number(), MORNING, original.change(), original.previousHash(), original.hash()));
        List<Entry> forged = new ArrayList<>(whole.entries());
        forged.set(at, Entry.after(at, CanonicalText.NO_HASH, NOON, original.change()));

        assertThat(CaseHistory.of(rewritten).verify())
                .isEqualTo(new ChainCheck.Broken(at + 1, "entry " + (at + 1) + " is not as it was written"));
        assertThat(CaseHistory.of(otherHand).verify())
                .isEqualTo(new ChainCheck.Broken(at + 1, "entry " + (at + 1) + " is not as it was written"));
        assertThat(CaseHistory.of(forged).verify())
                .isEqualTo(
                        new ChainCheck.Broken(at + 1, "entry " + (at + 1) + " does not follow from the one before it"));
    }

    @Test
    void an_entry_taken_out_of_the_middle_shows() {
        List<Entry> entries = new ArrayList<>(opened().with(List.of(new NoteAdded("a"), new NoteAdded("b")), NOON)
                .entries());
        entries.remove(1);

        assertThat(CaseHistory.of(entries).verify())
                .isEqualTo(new ChainCheck.Broken(2, "entry 2 is missing; entry 3 stands in its place"));
    }

    @Test
    void an_entry_forged_with_its_own_right_hash_shows_at_the_next() {
        CaseHistory whole = opened().with(List.of(new NoteAdded("a"), new NoteAdded("b")), NOON);
        List<Entry> entries = new ArrayList<>(whole.entries());
        entries.set(1, Entry.after(1, entries.get(0).hash(), NOON, new NoteAdded("forged")));

        assertThat(CaseHistory.of(entries).verify())
                .isEqualTo(new ChainCheck.Broken(3, "entry 3 does not follow from the one before it"));
    }

    @Property(tries = 200)
    void a_history_made_of_a_case_leads_to_that_case_again(@ForAll("cases") CaseFile given) {
        CaseHistory made = CaseHistory.leadingTo(given, NOON);

        assertThat(made.verify()).isInstanceOf(ChainCheck.Intact.class);
        assertThat(made.present())
                .usingRecursiveComparison()
                .ignoringFields("texts")
                .isEqualTo(given);
        assertThat(made.present().texts()).containsAllEntriesOf(kept(given.texts()));
        assertThat(made.present().texts()).doesNotContainKey(TextField.INTERVIEW_POSITION);
    }

    private static Map<TextField, String> kept(Map<TextField, String> texts) {
        Map<TextField, String> kept = new HashMap<>(texts);
        kept.remove(TextField.INTERVIEW_POSITION);
        return kept;
    }

    @Test
    void an_entry_is_contained_at_its_own_place_and_nowhere_else() {
        CaseHistory two = opened().with(new NoteAdded("a"), NOON);
        CaseHistory three = two.with(new NoteAdded("b"), NOON);
        Entry other = opened().with(new NoteAdded("c"), NOON).last();

        assertThat(three.contains(two.last())).isTrue();
        assertThat(three.contains(three.last())).isTrue();
        assertThat(three.contains(three.entries().get(0))).isTrue();
        assertThat(three.contains(other)).isFalse();
        assertThat(two.contains(three.last())).isFalse();
    }

    @Test
    void histories_are_equal_by_their_entries() {
        CaseHistory one = opened().with(new NoteAdded("a"), NOON);

        assertThat(CaseHistory.of(one.entries())).isEqualTo(one).hasSameHashCodeAs(one);
        assertThat(opened().with(new NoteAdded("b"), NOON)).isNotEqualTo(one);
        assertThat(one).hasToString("history of case 'grinds-into-low', 2 entries");
    }

    @Test
    void a_file_taken_off_is_gone_from_the_case_and_kept_in_its_history() {
        AttachmentAdded added = (AttachmentAdded) CaseArbitraries.attachment(1);
        CaseHistory gone = opened().with(added, NOON).with(new AttachmentRemoved(added.attachment()), NOON);

        assertThat(gone.present().attachments()).isEmpty();
        assertThat(gone.entries()).hasSize(3);
        assertThat(gone.with(added, NOON).present().attachments()).hasSize(1);
    }

    @Test
    void the_end_of_a_chain_is_in_every_history_that_goes_on_from_it() {
        CaseHistory two = opened().with(new NoteAdded("a"), NOON);
        HeadMark mark = HeadMark.of(two);

        assertThat(mark.isIn(two)).isTrue();
        assertThat(mark.isIn(two.with(new NoteAdded("b"), NOON))).isTrue();
        assertThat(mark.isIn(opened())).isFalse();
        assertThat(HeadMark.of(opened()).isIn(two)).isTrue();
        assertThat(new HeadMark(two.id(), 0, mark.hash()).isIn(two)).isFalse();
        assertThat(new HeadMark(new CaseId("other"), 2, mark.hash()).isIn(two)).isFalse();
    }

    @Provide
    Arbitrary<CaseFile> cases() {
        return Arbitraries.lazy(CaseArbitraries::cases);
    }

    @Nested
    class Refusals {
        @Test
        void a_signed_off_case_takes_only_a_correction_with_a_reason() {
            CaseHistory closed = opened().with(new FindingSet(BURNED), MORNING).with(new SignedOff(), NOON);

            CaseHistory corrected =
                    closed.with(new CorrectedAfterSignOff("wrong cone noted", new FindingSet(SOUND)), NOON);

            assertThatThrownBy(() -> closed.with(new FindingSet(SOUND), NOON))
                    .isInstanceOf(CaseRefused.class)
                    .hasMessage("case 'grinds-into-low' was signed off by ben; enter a correction with its reason");
            assertThatThrownBy(() -> closed.with(new SignedOff(), NOON)).isInstanceOf(CaseRefused.class);
            assertThat(corrected.present().findings().values()).containsExactly(SOUND);
            assertThat(corrected.present().isSignedOff()).isTrue();
            assertThat(corrected.last().change())
                    .isEqualTo(
                            new CorrectedAfterSignOff("wrong cone noted", new FindingSet(Optional.of(BURNED), SOUND)));
        }

        @Test
        void a_correction_needs_a_reason_and_a_signed_off_case() {
            assertThatThrownBy(() -> new CorrectedAfterSignOff(" ", new NoteAdded("x")))
                    .hasMessage("reason: nothing is written; write at least one word");
            assertThatThrownBy(() -> new CorrectedAfterSignOff("x", new SignedOff()))
                    .hasMessage("correction: 'signed-off' cannot be one; correct what the case says");
            assertThatThrownBy(() -> opened().with(new CorrectedAfterSignOff("x", new NoteAdded("y")), NOON))
                    .hasMessage("case 'grinds-into-low' is not signed off; change it without a reason");
        }

        @Test
        void what_is_not_there_cannot_be_cleared() {
            assertThatThrownBy(() -> opened().with(new FindingCleared("lever-hops"), NOON))
                    .hasMessage("finding: 'lever-hops' is not on case 'grinds-into-low'; nothing was changed");
            assertThatThrownBy(() -> opened().with(new MeasurementCleared("oil-level"), NOON))
                    .hasMessage("measurement: 'oil-level' is not on case 'grinds-into-low'; nothing was changed");
            assertThatThrownBy(() -> opened().with(new EvidenceRemoved("cone-energy"), NOON))
                    .hasMessage("evidence: 'cone-energy' is not on case 'grinds-into-low'; nothing was changed");
        }

        @Test
        void a_case_opens_once_and_first() {
            CaseHistory open = opened();

            assertThatThrownBy(() -> open.with(open.entries().get(0).change(), NOON))
                    .hasMessage("case 'grinds-into-low' is already open; change it instead");
            assertThatThrownBy(() -> CaseHistory.of(List.of()))
                    .hasMessage("history: it does not begin with the opening of a case; bring back the first entry");
        }

        @Test
        void the_same_bytes_are_attached_once() {
            CaseHistory once = opened().with(CaseArbitraries.attachment(1), NOON);

            assertThatThrownBy(() -> once.with(CaseArbitraries.attachment(1), NOON))
                    .hasMessage("attachment 'cone 1.jpg': the same bytes are on case 'grinds-into-low' as 'cone 1.jpg';"
                            + " leave it, or remove that one first");
        }

        @Test
        void nobody_and_control_characters_are_no_name() {
            assertThatThrownBy(() -> new Stamp(NOON.time(), " "))
                    .hasMessage("who: nothing is written; write at least one word");
            assertThatThrownBy(() -> new Stamp(NOON.time(), "a\u001b[2J"))
                    .hasMessage("who: character U+001B at place 2 cannot be kept; remove it");
        }
    }

    @Provide
    Arbitrary<List<Change>> changes() {
        return Arbitraries.lazy(CaseArbitraries::changes).list().ofMinSize(1).ofMaxSize(10);
    }

    @Provide
    Arbitrary<Integer> place() {
        return Arbitraries.integers().between(0, 100);
    }
}
