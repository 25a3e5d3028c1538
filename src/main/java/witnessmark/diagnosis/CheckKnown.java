package witnessmark.diagnosis;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.Measurement;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.gearbox.LoadPath;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Measure;
import witnessmark.yaml.Fault;
import witnessmark.yaml.Faults;
import witnessmark.yaml.Nearest;

/** Refuses a case that names findings or measures the knowledge base does not know, all at once. */
public final class CheckKnown {
    private CheckKnown() {}

    public static void check(CaseFile file, KnowledgeBase knowledge) {
        check(file, CombinedEvidence.of(file), knowledge);
    }

    /** Ids of findings and measures of the case that this knowledge does not know, as where another shop's own are used. */
    public static List<String> unknown(CaseFile file, KnowledgeBase knowledge) {
        Stream<String> findings = Stream.concat(
                file.findings().keySet().stream(),
                file.evidence().values().stream().flatMap(e -> e.findings().keySet().stream()));
        return Stream.concat(
                        findings.filter(id -> !knowledge.findings().containsKey(id)),
                        file.measurements().keySet().stream()
                                .filter(id -> !knowledge.measures().containsKey(id)))
                .distinct()
                .toList();
    }

    /** What can be judged here: a signed case is read wherever it is opened, without what is not known there. */
    public static CaseFile toJudge(CaseFile file, KnowledgeBase knowledge) {
        return file.isSignedOff() ? knownPart(file, knowledge) : file;
    }

    /** The case without what this knowledge does not know; for a record that must be read although not all is known. */
    public static CaseFile knownPart(CaseFile file, KnowledgeBase knowledge) {
        CaseSheet sheet = new CaseSheet(file);
        List<String> unknown = unknown(file, knowledge);
        unknown.forEach(id -> {
            if (file.findings().containsKey(id)) {
                sheet.clearFinding(id);
            } else if (file.measurements().containsKey(id)) {
                sheet.clearMeasurement(id);
            }
        });
        file.evidence().values().stream()
                .filter(e -> e.findings().keySet().stream().anyMatch(unknown::contains))
                .forEach(e -> sheet.evidence(e.without(unknown)));
        return sheet.toCaseFile();
    }

    static void check(CaseFile file, CombinedEvidence evidence, KnowledgeBase knowledge) {
        Faults faults = new Faults();
        String name = "case " + file.id().toString();
        file.findings()
                .keySet()
                .forEach(id -> known(name, "finding", id, knowledge.findings().keySet(), faults));
        file.findings().values().stream()
                .filter(entry -> !takesGear(entry, knowledge))
                .forEach(entry -> faults.add(new Fault(
                        name,
                        0,
                        0,
                        "finding '" + entry.finding() + "' is not of a rail: gear '"
                                + entry.gear().orElse("") + "' names two",
                        "give " + LoadPath.WORDS)));
        Set<String> followed = new LinkedHashSet<>(evidence.findings().keySet());
        file.evidence().values().forEach(e -> followed.addAll(e.findings().keySet()));
        followed.forEach(id -> known(name, "finding", id, knowledge.findings().keySet(), faults));
        for (Measurement m : file.measurements().values()) {
            known(name, "measure", m.measure(), knowledge.measures().keySet(), faults);
            Measure measure = knowledge.measures().get(m.measure());
            if (measure != null && measure.unit().quantity() != m.unit().quantity()) {
                faults.add(new Fault(
                        name,
                        0,
                        0,
                        "measure '" + m.measure() + "' is given in " + m.unit().symbol(),
                        "it is measured in " + measure.unit().symbol() + " or a unit that converts to it"));
            }
        }
        faults.throwIfAny();
    }

    /** Whether the gear said of it can be: only what is of a rail has two. */
    public static boolean takesGear(FindingEntry entry, KnowledgeBase knowledge) {
        Finding finding = knowledge.findings().get(entry.finding());
        return finding == null
                || !entry.namesRail()
                || finding.gearRole().equals(Optional.of(Finding.GearRole.OF_RAIL));
    }

    private static void known(String name, String what, String id, Collection<String> known, Faults faults) {
        if (!known.contains(id)) {
            faults.add(new Fault(
                    name,
                    0,
                    0,
                    "no " + what + " '" + id + "' is known",
                    Nearest.mend(id, known, "search it with: knowledge find WORDS")));
        }
    }
}
