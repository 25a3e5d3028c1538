package witnessmark.shell.knowledge;

import java.util.Collection;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingEntry;
import witnessmark.diagnosis.CheckKnown;
import witnessmark.gearbox.LoadPath;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.yaml.Nearest;

/** Refuses ids that the knowledge base does not know, naming the nearest ones. */
public final class KnownIds {
    private final KnowledgeBase knowledge;

    public KnownIds(KnowledgeBase knowledge) {
        this.knowledge = knowledge;
    }

    public void check(CaseFile file) {
        CheckKnown.check(file, knowledge);
    }

    /** Refuses unknown words of a case that is open; one that was signed stands as it is, with what is known elsewhere. */
    public void checkOpen(CaseFile file) {
        CheckKnown.check(file.isSignedOff() ? CheckKnown.knownPart(file, knowledge) : file, knowledge);
    }

    public void finding(String id) {
        known("finding", id, knowledge.findings().keySet());
    }

    public void measure(String id) {
        known("measure", id, knowledge.measures().keySet());
    }

    /** Refuses the two gears of a rail for a finding that is not of one. */
    public void gear(FindingEntry entry) {
        if (!CheckKnown.takesGear(entry, knowledge)) {
            throw new Refused(
                    "finding '" + entry.finding() + "' is not of a rail: gear '"
                            + entry.gear().orElse("") + "' names two",
                    "give " + LoadPath.WORDS);
        }
    }

    void cause(String id) {
        known("cause", id, knowledge.causes().keySet());
    }

    private static void known(String what, String id, Collection<String> ids) {
        if (!ids.contains(id)) {
            throw new Refused(
                    "no " + what + " '" + Terminal.harmless(id) + "' is known",
                    Nearest.mend(id, ids, "search it with: knowledge find WORDS"));
        }
    }
}
