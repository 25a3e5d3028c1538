package witnessmark.knowledge;

import java.util.List;

/**
 * Findings that are one fact told in several ways, so that they count once: the first of the list that is present.
 *
 * @param findings the most telling first
 */
public record OneFact(Kind kind, String id, String title, List<String> findings) {

    /** Why they are one fact. */
    public enum Kind {
        /** Answers to one question: which gear, which way, how many. */
        QUESTION,
        /** Witnesses of one act: the log, what came of it, what was told of it, what was reckoned from it. */
        ACT
    }

    public OneFact {
        findings = List.copyOf(findings);
    }
}
