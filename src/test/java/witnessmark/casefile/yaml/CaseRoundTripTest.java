package witnessmark.casefile.yaml;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import witnessmark.casefile.CaseArbitraries;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.ExpectedOutcome;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.AttachmentRemoved;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.EvidenceRemoved;
import witnessmark.casefile.history.FindingCleared;
import witnessmark.casefile.history.MeasurementCleared;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.SignedOff;
import witnessmark.casefile.history.Stamp;
import witnessmark.gearbox.Layout;

class CaseRoundTripTest {
    private static final Stamp STAMP = new Stamp(Instant.parse("2026-03-02T08:15:00.250Z"), "Anna \"A\" Weld");

    @Property(tries = 300)
    void what_is_written_reads_back_equal_and_writes_the_same_again(@ForAll("cases") CaseFile given) {
        String written = new CaseWriter().write(CaseDocument.of(given));

        CaseDocument read = new CaseReader().read("case.yaml", written.getBytes(UTF_8));

        assertThat(read.present()).isEqualTo(given);
        assertThat(new CaseWriter().write(read)).isEqualTo(written);
    }

    @Property(tries = 150)
    void a_history_reads_back_with_every_hash(@ForAll("changes") List<Change> changes, @ForAll boolean signedOff) {
        CaseHistory open = CaseHistory.open(
                        new Opened(new CaseId("case-1"), "t", "c", Vehicle.unknown(), Layout.unknown()), STAMP)
                .with(changes, STAMP)
                .with(CaseArbitraries.attachment(1), STAMP);
        CaseHistory given = signedOff
                ? open.with(new SignedOff(), STAMP)
                        .with(new CorrectedAfterSignOff("read wrongly", CaseArbitraries.attachment(2)), STAMP)
                : open;

        String written = new CaseWriter().write(CaseDocument.of(given));
        CaseDocument read = new CaseReader().read("case.yaml", written.getBytes(UTF_8));

        assertThat(read.history()).contains(given);
        assertThat(read.present()).isEqualTo(given.present());
    }

    @Property(tries = 300)
    void a_change_reads_back_from_its_canonical_text(@ForAll("change") Change given) {
        String text = CanonicalText.of(given);

        assertThat(ChangeReader.read("entry 2", text)).isEqualTo(given);
    }

    @Property(tries = 100)
    void what_was_taken_off_reads_back_with_what_stood_there(
            @ForAll("finding") FindingEntry finding,
            @ForAll("measurement") Measurement measurement,
            @ForAll("evidence") Evidence evidence,
            @ForAll boolean known) {
        for (Change given : List.of(
                new FindingCleared(finding.finding(), Optional.of(finding).filter(f -> known)),
                new MeasurementCleared(
                        measurement.measure(), Optional.of(measurement).filter(m -> known)),
                new EvidenceRemoved(evidence.id(), Optional.of(evidence).filter(e -> known)),
                new AttachmentRemoved(((AttachmentAdded) CaseArbitraries.attachment(3)).attachment()))) {
            assertThat(ChangeReader.read("entry 2", CanonicalText.of(given))).isEqualTo(given);
        }
    }

    @Provide
    Arbitrary<FindingEntry> finding() {
        return Arbitraries.lazy(CaseArbitraries::findings);
    }

    @Provide
    Arbitrary<Measurement> measurement() {
        return Arbitraries.lazy(CaseArbitraries::measurements);
    }

    @Provide
    Arbitrary<Evidence> evidence() {
        return Arbitraries.lazy(CaseArbitraries::evidence);
    }

    @Property(tries = 20)
    void an_expectation_reads_back(@ForAll boolean contradiction) {
        CaseDocument given = new CaseDocument(
                new CaseSheet(new CaseId("a")).toCaseFile(),
                Optional.of(new ExpectedOutcome(
                        "undetermined", List.of("low-air"), List.of("low-air", "filter-clogged"), contradiction)),
                Optional.empty());

        String written = new CaseWriter().write(given);

        assertThat(new CaseReader().read("a.yaml", written.getBytes(UTF_8))).isEqualTo(given);
    }

    @Provide
    Arbitrary<CaseFile> cases() {
        return CaseArbitraries.cases();
    }

    @Provide
    Arbitrary<Change> change() {
        return CaseArbitraries.changes();
    }

    @Provide
    Arbitrary<List<Change>> changes() {
        return Arbitraries.lazy(CaseArbitraries::changes).list().ofMaxSize(10);
    }
}
