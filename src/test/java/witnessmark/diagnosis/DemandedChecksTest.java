package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.fact.HoldReason;

/** What a verdict that only points somewhere names as missing is what to look at next: the program held against itself. */
class DemandedChecksTest {
    private static final int SHOWN = 3;
    private static final Path OTHERS = Path.of("src/test/resources/witnessmark");

    private final Diagnosis diagnosis = new Diagnosis(RuleBase.shipped(), ShippedKnowledge.load());

    @Test
    void what_the_verdict_names_as_missing_comes_first() {
        List<String> wrong = new ArrayList<>();
        int pointing = 0;
        int looks = 0;
        for (CaseDocument document : documents()) {
            CaseFile file = document.present();
            Judgement judgement = diagnosis.judge(file);
            List<String> next =
                    judgement.nextChecks().stream().map(NextCheck::finding).toList();
            List<String> open = judgement.demanded().stream()
                    .filter(f -> !file.findings().containsKey(f))
                    .toList();
            List<String> shown = next.subList(0, Math.min(SHOWN, next.size()));
            boolean first = open.size() <= SHOWN ? shown.containsAll(open) : open.containsAll(shown);
            pointing += judgement.verdict().standing() == Verdict.Standing.POINTS_TO ? 1 : 0;
            looks += open.size();
            if (!first) {
                wrong.add(file.id() + ": " + open + " but " + shown);
            }
        }

        assertThat(pointing).isGreaterThan(10);
        assertThat(looks).isGreaterThan(20);
        assertThat(wrong).isEmpty();
    }

    /** "To settle it look at" what was looked at already would send somebody twice. */
    @Test
    void marks_that_would_release_a_cause_were_not_answered_already() {
        List<String> answered = new ArrayList<>();
        int named = 0;
        for (CaseDocument document : documents()) {
            CaseFile file = document.present();
            for (RankedCause cause : diagnosis.judge(file).causes()) {
                for (HoldReason reason : cause.reasons()) {
                    if (reason instanceof HoldReason.MarkAlone alone) {
                        named += alone.looks().size();
                        alone.looks().stream()
                                .filter(look -> file.findings().containsKey(look)
                                        && file.findings().get(look).state() != FindingState.UNSURE)
                                .forEach(look -> answered.add(file.id() + " " + cause.id() + ": " + look));
                    }
                }
            }
        }

        assertThat(named).isGreaterThan(20);
        assertThat(answered).isEmpty();
    }

    @Test
    void nothing_is_demanded_where_the_verdict_stands_or_points_nowhere() {
        for (CaseDocument document : ShippedKnowledge.samples()) {
            Judgement judgement = diagnosis.judge(document.present());
            if (judgement.verdict().standing() != Verdict.Standing.POINTS_TO) {
                assertThat(judgement.demanded()).as(judgement.caseId()).isEmpty();
            }
        }
    }

    @Test
    void the_places_of_the_plan_hold_each_check_once_and_open_each_place_once() {
        for (CaseDocument document : ShippedKnowledge.samples()) {
            try (OpenCase open = diagnosis.open(document.present())) {
                List<NextVisit> visits = open.visits();

                assertThat(visits.stream().flatMap(v -> v.checks().stream()).map(NextCheck::finding))
                        .as(document.present().id().text())
                        .doesNotHaveDuplicates();
                assertThat(visits.stream().filter(v -> v.openMinutes() > 0).map(NextVisit::access))
                        .as(document.present().id().text())
                        .doesNotHaveDuplicates();
            }
        }
    }

    private static List<CaseDocument> documents() {
        return Stream.concat(
                        ShippedKnowledge.samples().stream(),
                        Stream.of("foreman-cases", "unseen-cases", "bench-cases")
                                .flatMap(folder -> ShippedKnowledge.cases(OTHERS.resolve(folder)).stream()))
                .toList();
    }
}
