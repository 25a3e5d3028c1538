package witnessmark.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;

/**
 * A part seen broken, and nothing else asked: a fork, a cover, a bearing, a pump can be flawed from new, worn out, starved,
 * dirtied, forced or fitted wrongly, so nobody's class follows from the break alone (common practice, no source).
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class WhyItFailedTest {
    /**
     * Causes that their own look alone concludes, each since the look itself says how it came about, or since whatever brought
     * it about is of the same owner: settings, dirt and wet are upkeep's, what lies outside the gearbox is nobody's here, an
     * aged or worn ring or valve is an item of upkeep. Whoever adds one says why it is no part that failed of several reasons.
     */
    private static final Set<String> SAY_THEMSELVES = Set.of(
            // found so dirty, wet, iced, varnished or rusted, or set so
            "air-oil-water",
            "breather-blocked",
            "clutch-brake-too-early",
            "exhaust-blocked",
            "filter-clogged",
            "low-air",
            "air-supply-restricted",
            "range-control-misadjusted",
            "regulator-high",
            "ride-height",
            // valves and rings that the air wears and swells, serviced with it
            "bar-seal-leak",
            "control-valve",
            "interlock-valve-stuck",
            "range-valve-leak",
            "splitter-bar-seal-leak",
            "splitter-seals",
            "splitter-valve-stuck",
            // outside the gearbox whichever way it came about
            "axle-or-wheel-noise",
            "axle-shaft-broken",
            "engine-rear-seal",
            "slow-engine-decay",
            "worn-mounts",
            // the title says of what: age, use, coolant's side; a part left out is somebody's hand
            "cooler-internal-leak",
            "joint-seal-aged",
            "synchro-misassembled",
            // items of upkeep that are adjusted, bled or freed at a service
            "release-system-fault",
            "retarder-stays-on");

    private static final String SAYS_NOT_ASKED = "how it came to be so was not asked";

    private KnowledgeBase knowledge;
    private Diagnosis diagnosis;

    @BeforeAll
    void load() {
        knowledge = ShippedKnowledge.load();
        diagnosis = new Diagnosis(RuleBase.shipped(), knowledge);
    }

    private static CaseFile only(FindingEntry... entries) {
        CaseSheet sheet = new CaseSheet(new CaseId("alone"));
        for (FindingEntry entry : entries) {
            sheet.finding(entry);
        }
        return sheet.toCaseFile();
    }

    private static FindingEntry present(String finding) {
        return new FindingEntry(finding, FindingState.PRESENT);
    }

    @Test
    void one_broken_part_alone_concludes_no_class_but_where_the_look_says_why() {
        Set<String> concluded = new TreeSet<>();
        for (Cause cause : knowledge.causes().values()) {
            for (String look : cause.looks()) {
                Verdict verdict = diagnosis.judge(only(present(look))).verdict();
                if (verdict.isDetermined()) {
                    concluded.addAll(verdict.carriedBy());
                }
            }
        }

        assertThat(concluded).isSubsetOf(SAY_THEMSELVES).hasSizeGreaterThan(10);
    }

    @Test
    void every_part_that_failed_has_something_that_can_be_asked_of_why() {
        assertThat(knowledge.causes().values().stream().filter(Cause::asksWhy))
                .hasSizeGreaterThan(25)
                .allSatisfy(cause -> assertThat(cause.classWhen())
                        .as(cause.id())
                        .anySatisfy(turn -> assertThat(turn.classId()).isNotEqualTo(cause.classId()))
                        .anySatisfy(turn -> {
                            Finding.Kind kind =
                                    knowledge.findings().get(turn.finding()).kind();
                            assertThat(kind == Finding.Kind.PAPER || kind == Finding.Kind.ACCOUNT || kind.isPhysical())
                                    .isTrue();
                        }));
    }

    @Test
    void a_broken_release_fork_points_and_is_concluded_once_its_fracture_was_read() {
        CaseFile alone = only(present("release-fork-broken"));
        CaseFile read =
                only(present("release-fork-broken"), new FindingEntry("fracture-origin-at-flaw", FindingState.ABSENT));
        CaseFile flawed = only(present("release-fork-broken"), present("fracture-origin-at-flaw"));

        assertThat(diagnosis.judge(alone).verdict().isDetermined()).isFalse();
        assertThat(diagnosis.judge(alone).verdict().pointsTo()).contains("wear-out");
        assertThat(held(diagnosis, alone)).anyMatch(said -> said.contains(SAYS_NOT_ASKED));
        assertThat(held(diagnosis.in(Language.SPANISH), alone))
                .anyMatch(said -> said.contains("no se preguntó cómo llegó a estar así"));
        assertThat(diagnosis.judge(read).verdict().classId()).isEqualTo("wear-out");
        assertThat(diagnosis.judge(flawed).verdict().classId()).isNotEqualTo("wear-out");
    }

    @Test
    void a_leaking_range_cover_waits_for_a_word_of_how_it_came_about() {
        CaseFile alone = only(present("bubbles-at-range-cover"));
        CaseFile sinceRepair = only(present("bubbles-at-range-cover"), present("fault-since-repair"));
        CaseFile notSince =
                only(present("bubbles-at-range-cover"), new FindingEntry("repaired-lately", FindingState.ABSENT));

        assertThat(diagnosis.judge(alone).verdict().isDetermined()).isFalse();
        assertThat(diagnosis.judge(sinceRepair).verdict().classId()).isNotEqualTo("maintenance");
        assertThat(diagnosis.judge(notSince).verdict().classId()).isEqualTo("maintenance");
    }

    private static java.util.List<String> held(Diagnosis diagnosis, CaseFile file) {
        return diagnosis.judge(file).verdict().open();
    }
}
