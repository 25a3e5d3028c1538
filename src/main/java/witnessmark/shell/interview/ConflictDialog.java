package witnessmark.shell.interview;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.Judgement.Conflict;
import witnessmark.interview.Interview;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Texts;
import witnessmark.shell.print.Page;

/** Says which answers do not go together, and corrects the one that proves wrong. */
final class ConflictDialog {
    private final Interview interview;
    private final KnowledgeBase knowledge;
    private final Asker asker;
    private final Page page;
    private final Texts wording;
    private final Set<Conflict> said = new HashSet<>();
    private boolean begun;

    ConflictDialog(Interview interview, KnowledgeBase knowledge, Asker asker, Page page, Texts wording) {
        this.interview = interview;
        this.knowledge = knowledge;
        this.asker = asker;
        this.page = page;
        this.wording = wording;
    }

    /** Takes the contradictions that the case came with as said; those are not asked about as new. */
    void begin() {
        if (!begun) {
            said.addAll(interview.judgement().contradictions());
            begun = true;
        }
    }

    /** Asks about the contradictions that have come up since they were last asked about. */
    void askAboutNew() {
        List<Conflict> fresh = new ArrayList<>(interview.judgement().contradictions());
        fresh.removeIf(conflict -> !said.add(conflict));
        fresh.forEach(this::ask);
    }

    /** Asks about every contradiction on record. */
    void askAboutAll() {
        List.copyOf(interview.judgement().contradictions()).forEach(this::ask);
    }

    private void ask(Conflict conflict) {
        List<String> findings = conflict.findings();
        page.blank();
        page.indented("  ", "  ", wording.text("conflict.title", conflict.why()));
        IntStream.range(0, findings.size()).forEach(i -> page.indented("  ", "     ", line(i + 1, findings.get(i))));
        page.flush();
        List<String> numbers = IntStream.rangeClosed(1, findings.size())
                .mapToObj(String::valueOf)
                .toList();
        while (true) {
            String answer = asker.ask("conflict" + Asker.SUB + "which", wording.text("conflict.which") + " ", numbers)
                    .orElse("")
                    .strip();
            int number = numbers.indexOf(answer);
            if (number >= 0) {
                correct(findings.get(number));
                return;
            }
            if (isUnsure(answer)) {
                page.indented("  ", "  ", wording.text("conflict.stays"));
                return;
            }
            asker.refused(wording.text("conflict.number", answer, numbers.size()));
        }
    }

    /** Nothing said, or said that it cannot be told; any other words are asked about again, not taken for that. */
    private static boolean isUnsure(String answer) {
        return answer.isEmpty()
                || SpokenAnswer.of(answer)
                        .filter(s -> s.state() == FindingState.UNSURE || s.state() == FindingState.NOT_LOOKED_AT)
                        .isPresent();
    }

    private void correct(String finding) {
        try {
            interview.doesNotHold(finding);
            page.indented("  ", "    ", wording.text("conflict.corrected", line(finding)));
        } catch (CaseRefused e) {
            page.indented("  ", "  ", e.getMessage());
        }
    }

    private String line(int number, String finding) {
        return wording.text("conflict.one", number, line(finding));
    }

    private String line(String finding) {
        return wording.text(
                "conflict.finding",
                knowledge.findings().get(finding).title(),
                wording.text("state." + interview.stateOf(finding).word()));
    }
}
