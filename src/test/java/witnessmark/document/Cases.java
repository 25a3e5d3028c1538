package witnessmark.document;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Limits;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.TextField;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Entry;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.Stamp;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.OpenCase;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;
import witnessmark.language.Language;
import witnessmark.truck.ReadyTrucks;

/** Cases to write documents of. */
final class Cases {
    static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    static final Stamp STAMP = new Stamp(Instant.parse("2026-03-02T08:15:00Z"), "R. Ortega");

    static final MadeWith MADE = new MadeWith("of a test", "ab".repeat(32), Optional.empty());

    /** Text that could do harm, or hide, on paper, on a screen or in a spreadsheet. */
    static final String HOSTILE =
            "<script>alert('x')</script> \u202Egnp.eziS\u202C =HYPERLINK(\"http://bad\") |a|b| **bold** "
                    + "\uD83D\uDE9A\uD83D\uDD27 \u05E9\u05DC\u05D5\u05DD {{head.caseId}} ]]> &amp; <!-- end";

    /** One word of 10,000 characters. */
    static final String LONG_WORD = "Kegelreibung".repeat(834).substring(0, 10_000);

    /** One judgement of a case serves every check of its papers. */
    private static final Map<CaseFile, Dossier> JUDGED = new ConcurrentHashMap<>();

    private Cases() {}

    static Dossier of(CaseFile file) {
        return JUDGED.computeIfAbsent(file, f -> of(f, Optional.empty(), Map.of()));
    }

    static Dossier stored(CaseFile file, Map<String, byte[]> contents) {
        return of(file, Optional.of(CaseHistory.leadingTo(file, STAMP)), contents);
    }

    private static Dossier of(CaseFile file, Optional<CaseHistory> history, Map<String, byte[]> contents) {
        try (OpenCase open = DIAGNOSIS.open(file)) {
            return new Dossier(
                    file,
                    history,
                    open.judgement(),
                    open.matrix(),
                    DIAGNOSIS.knowledge(),
                    MADE,
                    contents,
                    List.of(),
                    Optional.of(ReadyTrucks.named("thirteen-ratio")),
                    List.of(),
                    Shop.UNNAMED);
        }
    }

    /** The same in another language. */
    static Dossier in(Dossier all, Language language) {
        Diagnosis diagnosis = DIAGNOSIS.in(language);
        if (diagnosis.knowledge() == all.knowledge()) {
            return all;
        }
        try (OpenCase open = diagnosis.open(all.file())) {
            return new Dossier(
                    all.file(),
                    all.history(),
                    open.judgement(),
                    open.matrix(),
                    diagnosis.knowledge(),
                    all.made(),
                    all.contents(),
                    all.damaged(),
                    all.truck(),
                    all.figures(),
                    all.shop());
        }
    }

    /** The same without figures of a truck. */
    static Dossier withoutTruck(Dossier all) {
        return new Dossier(
                all.file(),
                all.history(),
                all.judgement(),
                all.matrix(),
                all.knowledge(),
                all.made(),
                all.contents(),
                all.damaged(),
                Optional.empty(),
                List.of(),
                all.shop());
    }

    /** The same with its second entry changed outside the program. */
    static Dossier changed(Dossier whole) {
        List<Entry> entries = new ArrayList<>(whole.history().orElseThrow().entries());
        Entry second = entries.get(1);
        entries.set(
                1,
                new Entry(
                        second.number(),
                        second.stamp(),
                        new NoteAdded("another text"),
                        second.previousHash(),
                        second.hash()));
        return new Dossier(
                whole.file(),
                Optional.of(CaseHistory.of(entries)),
                whole.judgement(),
                whole.matrix(),
                whole.knowledge(),
                whole.made(),
                whole.contents(),
                whole.damaged(),
                whole.truck(),
                whole.figures(),
                whole.shop());
    }

    static CaseFile sample(String id) {
        return ShippedKnowledge.samples().stream()
                .map(d -> d.present())
                .filter(f -> f.id().text().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /** A case that holds something of everything, every text of it hostile. */
    static CaseFile hostile() {
        CaseSheet sheet = new CaseSheet(new CaseId("hostile"))
                .text(TextField.TITLE, "<b>Title</b> \u202Eeltit " + "w".repeat(150))
                .text(TextField.COMPLAINT, HOSTILE + "\n- second line\n# third line\n" + LONG_WORD)
                .text(TextField.DRIVER_ACCOUNT, HOSTILE)
                .text(TextField.WORK_DONE, HOSTILE)
                .vehicle(new Vehicle(
                        "<img src=x onerror=alert(1)>",
                        "\u2066serial\u2069",
                        HOSTILE,
                        OptionalDouble.of(384_000.5),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        HOSTILE))
                .gearbox(Layout.unknown())
                .finding(new FindingEntry("range-cone-low-burned", FindingState.PRESENT, HOSTILE))
                .finding(new FindingEntry("range-cone-high-burned", FindingState.UNSURE, LONG_WORD))
                .measurement(new Measurement(
                        "range-regulator-pressure",
                        44.25,
                        Unit.PSI,
                        Optional.of(new Limits(
                                OptionalDouble.of(57),
                                OptionalDouble.of(62),
                                Unit.PSI,
                                "manual </td><script>1</script>")),
                        HOSTILE))
                .note(HOSTILE)
                .evidence(new Evidence(
                        "slip",
                        Evidence.Kind.COMPUTED,
                        HOSTILE,
                        "1/2 J w^2 <script>",
                        Map.of("road-speed", "87.5 km/h </script>"),
                        Optional.of(new Evidence.SourceFile("log<script>.csv", "ab".repeat(32))),
                        Map.of()));
        return sheet.toCaseFile();
    }

    /** What of a sample the program reads; what people wrote in it is left out. */
    static CaseSheet wordless(String sample) {
        CaseFile file = Cases.sample(sample);
        CaseSheet sheet = new CaseSheet(new CaseId("sin-palabras")).gearbox(file.gearbox());
        file.findings().values().forEach(f -> sheet.finding(new FindingEntry(f.finding(), f.state())));
        file.measurements()
                .values()
                .forEach(m -> sheet.measurement(new Measurement(
                        m.measure(),
                        m.value(),
                        m.unit(),
                        m.limits().map(l -> new Limits(l.low(), l.high(), l.unit(), "manual")),
                        "")));
        return sheet;
    }
}
