package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.OneFact;

/** Every fact of the shipped knowledge that can be told in several ways, told so, alone and on top of shipped cases. */
class OneFactOneWeightTest {
    private static final Diagnosis DIAGNOSIS = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());
    private static final KnowledgeBase KNOWLEDGE = DIAGNOSIS.knowledge();
    private static final int CASES = 4;

    private final Random random = new Random(20261127);

    /** An empty case and some of those shipped, drawn by chance. */
    private List<CaseFile> cases() {
        List<CaseFile> cases = new ArrayList<>();
        cases.add(new CaseSheet(new CaseId("empty")).toCaseFile());
        List<CaseFile> shipped = new ArrayList<>(ShippedKnowledge.samples().stream()
                .map(document -> document.present())
                .toList());
        Collections.shuffle(shipped, random);
        cases.addAll(shipped.subList(0, CASES));
        return cases;
    }

    private static List<Double> chances(CaseFile base, OneFact fact, List<String> present, List<String> absent) {
        try (OpenCase open = DIAGNOSIS.open(base)) {
            for (String finding : fact.findings()) {
                open.report(
                        finding,
                        present.contains(finding)
                                ? FindingState.PRESENT
                                : absent.contains(finding) ? FindingState.ABSENT : FindingState.NOT_LOOKED_AT);
            }
            return new TreeMap<>(open.judgement().causes().stream()
                            .collect(Collectors.toMap(RankedCause::id, RankedCause::probability)))
                    .values().stream().toList();
        }
    }

    private static boolean excludeEachOther(String one, String other) {
        return KNOWLEDGE.neverTogether().stream()
                .anyMatch(never -> Set.copyOf(never.findings()).equals(Set.of(one, other)));
    }

    @Test
    void an_act_told_in_several_ways_weighs_as_its_strongest_witness() {
        List<String> failing = new ArrayList<>();
        int told = 0;
        List<CaseFile> cases = cases();
        for (OneFact act : KNOWLEDGE.oneFacts()) {
            for (int first = 0; first < act.findings().size(); first++) {
                for (String second :
                        act.findings().subList(first + 1, act.findings().size())) {
                    String strongest = act.findings().get(first);
                    if (excludeEachOther(strongest, second)) {
                        continue;
                    }
                    CaseFile base = cases.get(told++ % cases.size());
                    if (!chances(base, act, List.of(strongest, second), List.of())
                            .equals(chances(base, act, List.of(strongest), List.of()))) {
                        failing.add(act.id() + ": " + second + " beside " + strongest + " in " + base.id());
                    }
                }
            }
        }
        assertThat(told).isGreaterThan(60);
        assertThat(failing).isEmpty();
    }

    @Test
    void the_other_answers_to_a_question_that_is_answered_weigh_nothing() {
        List<String> failing = new ArrayList<>();
        for (CaseFile base : cases()) {
            for (OneFact fact : KNOWLEDGE.oneFacts()) {
                for (String answer : fact.findings()) {
                    List<String> others = fact.findings().stream()
                            .filter(f -> !f.equals(answer))
                            .toList();
                    if (!chances(base, fact, List.of(answer), others)
                            .equals(chances(base, fact, List.of(answer), List.of()))) {
                        failing.add(fact.id() + ": " + answer + " in " + base.id());
                    }
                }
            }
        }
        assertThat(failing).isEmpty();
    }

    @Test
    void every_order_of_entry_gives_the_same_answer() {
        int judged = 0;
        for (CaseFile shipped : cases()) {
            List<FindingEntry> findings = shipped.findings().values().stream()
                    .filter(f -> f.toldBy().isEmpty() && f.gear().isEmpty())
                    .collect(Collectors.toCollection(ArrayList::new));
            Judgement first = null;
            for (int times = 0; times < 4; times++) {
                Collections.shuffle(findings, random);
                try (OpenCase open = DIAGNOSIS.open(shipped)) {
                    findings.forEach(f -> open.report(f.finding(), FindingState.NOT_LOOKED_AT));
                    findings.forEach(f -> open.report(f.finding(), f.state()));
                    Judgement judgement = open.judgement();
                    first = first == null ? judgement : first;
                    assertThat(judgement).as(shipped.id().text()).isEqualTo(first);
                    judged++;
                }
            }
            assertThat(first).as("entered all at once").isEqualTo(DIAGNOSIS.judge(shipped));
        }
        assertThat(judged).isGreaterThan(CASES);
    }
}
