package witnessmark.shell.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.Limits;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChangeSentence;
import witnessmark.casefile.history.Entry;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.casefile.logged.LoggedEvidence;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.ReadSample;
import witnessmark.diagnosis.Sentences;
import witnessmark.gearbox.Unit;
import witnessmark.gearbox.Units;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.print.Page;

/** A case and its history as text. */
final class CaseText {
    /** How each distance is said, by the name it is kept under. */
    private static final Map<String, String> DISTANCES = new TreeMap<>(
            Map.of("odometer-km", "odometer %s", "km-since-new", "%s since new", "km-since-repair", "%s since repair"));

    private final KnowledgeBase knowledge;
    private final Page page;

    CaseText(KnowledgeBase knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
    }

    /** @param together what the results kept in the case come to */
    void print(CaseDocument document, Optional<AfterSignOff> after, CombinedEvidence together) {
        CaseFile file = document.present();
        page.line("Case " + file.id() + (file.title().isEmpty() ? "" : ": " + file.title()));
        after.ifPresent(a -> a.lines().forEach(page::line));
        labelled("Complaint", file.complaint());
        labelled("Truck", truck(file.vehicle()));
        labelled("Gearbox", ChangeSentence.words(CaseForm.gearbox(file.gearbox())));
        labelled("Claim", ChangeSentence.words(file.claim().form()));
        labelled("Driver's account", file.driverAccount());
        labelled("Work done", file.workDone());
        if (!file.findings().isEmpty()) {
            page.heading("Findings");
            file.findings().values().forEach(this::finding);
        }
        if (!file.measurements().isEmpty()) {
            page.heading("Measurements");
            file.measurements().values().forEach(this::measurement);
        }
        if (!file.evidence().isEmpty()) {
            page.heading("Computed and logged evidence");
            file.evidence().values().forEach(this::evidence);
            LoggedEvidence.together(file, together)
                    .ifPresent(text -> page.item("All logs of the case, weighed as one record: " + text));
        }
        if (!file.attachments().isEmpty()) {
            page.heading("Attachments");
            List<DamagedFile> damaged =
                    document.history().map(CaseHistory::damagedFiles).orElse(List.of());
            file.attachments().forEach(a -> attachment(a, damaged));
        }
        if (!file.notes().isEmpty()) {
            page.heading("Notes").items(file.notes());
        }
        document.history().ifPresent(h -> page.blank()
                .line((h.entries().size() == 1 ? "1 entry, of " : h.entries().size() + " entries, the last of ")
                        + h.last().stamp().time() + "; see: case history " + file.id()));
        page.flush();
    }

    private void attachment(Attachment kept, List<DamagedFile> damaged) {
        String fault = damaged.stream()
                .filter(d -> d.file().equals(kept))
                .map(d -> " [" + d.fault().word().toUpperCase(Locale.ROOT) + "]")
                .findFirst()
                .orElse("");
        page.item(kept.name() + fault + ", " + kept.mediaType() + ", SHA-256 " + kept.sha256());
    }

    void printHistory(CaseHistory history) {
        for (Entry entry : history.entries()) {
            page.indented(
                    String.format("%4d ", entry.number()),
                    "     ",
                    entry.stamp().time() + " " + entry.stamp().who() + ": " + ChangeSentence.of(entry.change()));
            page.line("     hash " + entry.hash());
        }
        page.line("Each hash covers its entry and the hash before it; check with: case verify " + history.id());
        page.flush();
    }

    /** Distances in the shop's own unit. */
    private String truck(Vehicle vehicle) {
        Map<String, Object> form = CaseForm.vehicle(vehicle);
        List<String> distances = new ArrayList<>();
        DISTANCES.forEach((key, words) -> {
            if (form.remove(key) instanceof Double km) {
                distances.add(String.format(words, page.units().given(km, Unit.KILOMETRE)));
            }
        });
        Object note = form.remove("repair-note");
        List<String> said = new ArrayList<>();
        Stream.concat(Stream.of(ChangeSentence.words(form)), distances.stream())
                .filter(words -> !words.isEmpty())
                .forEach(said::add);
        if (note != null) {
            said.add(ChangeSentence.words(Map.of("repair-note", note)));
        }
        return String.join(", ", said);
    }

    private void evidence(Evidence evidence) {
        page.item(evidence.id() + " (" + evidence.kind().word() + "): " + evidence.summary());
        evidence.findings().forEach((finding, state) -> page.under(state.word() + ":", finding));
        evidence.inputs().forEach((name, value) -> page.under("in:", name.replace('-', ' ') + " = " + value));
        evidence.formula().lines().forEach(line -> page.under("how:", line));
        evidence.file().ifPresent(source -> page.under("file:", source.name() + ", SHA-256 " + source.sha256()));
    }

    private void finding(FindingEntry entry) {
        String title = knowledge.findings().containsKey(entry.finding())
                ? knowledge.findings().get(entry.finding()).title()
                : "not in this knowledge base";
        page.indented(
                String.format("  %-14s", entry.state().word()),
                " ".repeat(16),
                title + " (" + entry.finding() + ")"
                        + entry.gear().map(g -> ", gear " + g).orElse("")
                        + (entry.toldBy().isEmpty() ? "" : ", " + entry.toldWords())
                        + (entry.note().isEmpty() ? "" : " - " + entry.note()));
    }

    private void measurement(Measurement m) {
        String title = knowledge.measures().containsKey(m.measure())
                ? knowledge.measures().get(m.measure()).title()
                : m.measure();
        page.item(title + " (" + m.measure() + "): " + page.units().given(m.value(), m.unit())
                + m.limits().map(this::limits).orElseGet(() -> noLimit(m))
                + (m.note().isEmpty() ? "" : " - " + m.note()));
    }

    private String noLimit(Measurement m) {
        return Optional.ofNullable(knowledge.measures().get(m.measure()))
                .flatMap(measure -> ReadSample.of(measure, m))
                .map(sample -> ", no limit given; " + new Sentences(knowledge.language()).readAgainst(sample))
                .orElse(", no limit given");
    }

    private String limits(Limits limits) {
        boolean other = page.units().shown(limits.unit()) != limits.unit();
        return ", limit" + sides(limits, page.units()) + " ("
                + (other ? sides(limits, Units.BOTH).strip() + "; " : "") + limits.source() + ")";
    }

    private static String sides(Limits limits, Units units) {
        return side(" from ", limits.low(), limits.unit(), units) + side(" to ", limits.high(), limits.unit(), units);
    }

    private static String side(String word, OptionalDouble limit, Unit unit, Units units) {
        return limit.isPresent() ? word + units.read(limit.getAsDouble(), unit) : "";
    }

    private void labelled(String label, String text) {
        if (!text.isEmpty()) {
            page.indented(label + ": ", "  ", text);
        }
    }
}
