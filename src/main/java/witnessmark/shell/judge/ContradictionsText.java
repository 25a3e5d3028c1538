package witnessmark.shell.judge;

import witnessmark.diagnosis.Judgement;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;

/** Prints which findings of a case cannot all be true, and why; nothing where there are none. */
record ContradictionsText(KnowledgeBase knowledge, Page page, Texts wording) {
    void print(Judgement judgement) {
        if (judgement.contradictions().isEmpty()) {
            return;
        }
        page.heading(wording.text("status.contradictions"));
        judgement
                .contradictions()
                .forEach(c -> page.item(String.join(
                                " + ", c.findings().stream().map(this::title).toList())
                        + ": " + c.why()));
    }

    /** Its title; the id where the knowledge base does not have it. */
    String title(String finding) {
        return knowledge.findings().containsKey(finding)
                ? knowledge.findings().get(finding).title()
                : finding;
    }
}
