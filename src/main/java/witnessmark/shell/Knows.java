package witnessmark.shell;

import java.util.Collection;
import witnessmark.casefile.CaseFile;
import witnessmark.diagnosis.KnownWords;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.yaml.Nearest;

/** Refuses ids that the knowledge base does not know, naming the nearest ones. */
final class Knows {
    private final KnowledgeBase knowledge;

    Knows(KnowledgeBase knowledge) {
        this.knowledge = knowledge;
    }

    void check(CaseFile file) {
        KnownWords.check(file, knowledge);
    }

    void finding(String id) {
        known("finding", id, knowledge.findings().keySet());
    }

    void measure(String id) {
        known("measure", id, knowledge.measures().keySet());
    }

    void cause(String id) {
        known("cause", id, knowledge.causes().keySet());
    }

    private static void known(String what, String id, Collection<String> ids) {
        if (!ids.contains(id)) {
            throw new Refused("no " + what + " '" + Terminal.harmless(id) + "' is known; "
                    + Nearest.mend(id, ids, "search it with: knowledge find WORDS"));
        }
    }
}
