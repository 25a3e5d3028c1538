package witnessmark.triplog.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import witnessmark.diagnosis.ShippedKnowledge;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.triplog.event.EventKind;

/** The rows by which logs are weighed, against the knowledge base that they speak to. */
class LogFindingsTest {
    private final LogFindings findings = LogFindings.shipped();

    @Test
    void every_finding_that_logs_speak_for_is_one_of_the_knowledge_base() {
        KnowledgeBase knowledge = ShippedKnowledge.load();

        assertThat(Stream.concat(
                        findings.rows().stream().map(LogFinding::id),
                        Stream.of(
                                        findings.ratioFitsNoGear(),
                                        findings.speedDataBelievable(),
                                        findings.coastDistanceLong())
                                .map(LogFindings.OfTheWhole::id)))
                .hasSizeGreaterThan(20)
                .doesNotHaveDuplicates()
                .allSatisfy(id -> assertThat(knowledge.findings()).containsKey(id));
    }

    /** Else one act would be two witnesses. */
    @Test
    void what_speaks_beside_the_event_it_follows_from_is_one_act_with_it_in_the_knowledge_base() {
        KnowledgeBase knowledge = ShippedKnowledge.load();
        List<LogFinding> both = findings.rows().stream()
                .filter(row -> row.alsoAfter().isPresent())
                .toList();

        assertThat(both).isNotEmpty().allSatisfy(row -> {
            String other = findings.of(row.alsoAfter().orElseThrow()).id();
            assertThat(knowledge.oneFacts())
                    .anySatisfy(fact -> assertThat(fact.findings()).contains(row.id(), other));
        });
    }

    @Test
    void only_the_kinds_that_say_nothing_of_a_truck_or_driver_have_no_row() {
        Set<EventKind> without = EnumSet.allOf(EventKind.class);
        findings.rows().forEach(row -> without.remove(row.kind()));

        assertThat(without).containsExactlyInAnyOrder(EventKind.SHIFT_WITHOUT_DOUBLE_CLUTCH, EventKind.CLUTCH_SLIP);
    }
}
