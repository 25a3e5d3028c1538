package witnessmark.planner;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import witnessmark.knowledge.AccessStep;

/** The planner on a made-up tree of places; minutes and bits are small enough to be worked out by hand. */
class PlanChecksTest {
    private static final double[] DOUBT = {1.0, 1.0};
    private static final int[] BOTH = {0, 1};
    private static final Map<String, AccessStep> PLACES = places(
            step("cab", 3, null, false),
            step("pit", 10, null, false),
            step("gauges", 15, "pit", false),
            step("housing", 40, "pit", true),
            step("rear", 120, "pit", true),
            step("bench", 60, "rear", true));

    private final PlanChecks planner = new PlanChecks(PLACES);

    private static AccessStep step(String id, double minutes, String inside, boolean teardown) {
        return new AccessStep(
                id,
                id,
                minutes,
                Optional.ofNullable(inside),
                teardown,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static Map<String, AccessStep> places(AccessStep... steps) {
        Map<String, AccessStep> places = new LinkedHashMap<>();
        for (AccessStep step : steps) {
            places.put(step.id(), step);
        }
        return places;
    }

    private static Check check(String id, String place, double minutes, double bits) {
        return new Check(id, place, minutes, BOTH, new double[] {bits, 0}, 0);
    }

    private static List<String> ids(List<Visit> visits) {
        return visits.stream().flatMap(v -> v.checks().stream()).map(Check::id).toList();
    }

    private static Hands open(String... places) {
        return new Hands(Set.of(places), Optional.empty());
    }

    @Test
    void a_check_in_an_open_place_comes_before_the_same_check_behind_a_closed_one() {
        List<Check> checks = List.of(check("behind", "gauges", 5, 0.5), check("open", "cab", 5, 0.5));

        List<Visit> plan = planner.plan(checks, DOUBT, open("cab"));

        assertThat(ids(plan)).containsExactly("open", "behind");
    }

    @Test
    void a_check_keeps_its_place_in_the_order_when_its_place_is_opened_and_another_is_not() {
        List<Check> checks = List.of(check("one", "pit", 5, 0.5), check("other", "cab", 5, 0.1));

        assertThat(ids(planner.plan(checks, DOUBT, open("pit")))).startsWith("one");
        assertThat(ids(planner.plan(checks, DOUBT, open("cab")))).startsWith("other");
    }

    @Test
    void opening_is_shared_by_the_checks_behind_it() {
        // With 3 min for each question: alone one costs 25 + 5 + 3 min for 0.3 bit (0.0091 a minute), three together
        // 25 + 15 + 9 min for 1 - 0.7^3 = 0.657 bit (0.0134), a fourth brings the rate down to 0.0133. The cab comes
        // first in the walk and its lone check of 0.07 bit for 3 + 20 + 3 min (0.0027) lies between their quarters.
        List<Check> checks = new ArrayList<>(List.of(check("lone", "cab", 20, 0.07)));
        assertThat(planner.next(with(checks, check("a", "gauges", 5, 0.3)), DOUBT, Hands.off())
                        .orElseThrow()
                        .place())
                .isEqualTo("cab");
        for (String id : List.of("a", "b", "c", "d")) {
            checks.add(check(id, "gauges", 5, 0.3));
        }

        Visit first = planner.next(checks, DOUBT, Hands.off()).orElseThrow();

        assertThat(first.place()).isEqualTo("gauges");
        assertThat(first.opening()).containsExactly("pit", "gauges");
        assertThat(first.openMinutes()).isEqualTo(25);
        assertThat(first.checks()).hasSize(3);
        assertThat(first.bits()).isCloseTo(1 - Math.pow(0.7, 3), within(1e-12));
    }

    private static List<Check> with(List<Check> checks, Check more) {
        List<Check> all = new ArrayList<>(checks);
        all.add(more);
        return all;
    }

    @Test
    void what_is_seen_from_outside_comes_before_anything_is_taken_apart() {
        List<Check> checks = List.of(check("apart", "housing", 1, 0.9), check("outside", "gauges", 30, 0.05));

        assertThat(ids(planner.plan(checks, DOUBT, Hands.off()))).containsExactly("outside", "apart");
    }

    @Test
    void a_trifle_outside_holds_no_teardown_up() {
        List<Check> checks =
                List.of(check("apart", "housing", 1, 0.9), check("trifle", "gauges", 30, PlanChecks.TRIFLE_BITS * 0.9));

        assertThat(ids(planner.plan(checks, DOUBT, Hands.off()))).containsExactly("apart", "trifle");
    }

    @Test
    void what_stands_open_is_no_teardown_any_more() {
        List<Check> checks = List.of(check("apart", "housing", 1, 0.9), check("outside", "gauges", 30, 0.05));

        assertThat(ids(planner.plan(checks, DOUBT, open("pit", "housing")))).containsExactly("apart", "outside");
    }

    @Test
    void the_hands_stay_unless_another_place_is_clearly_better() {
        Hands inThePit = new Hands(Set.of("cab", "pit"), Optional.of("pit"));
        List<Check> little = List.of(check("here", "pit", 5, 0.2), check("there", "cab", 5, 0.3));
        List<Check> clear = List.of(check("here", "pit", 5, 0.1), check("there", "cab", 5, 0.6));

        assertThat(ids(planner.plan(little, DOUBT, inThePit))).startsWith("here");
        assertThat(ids(planner.plan(clear, DOUBT, inThePit))).startsWith("there");
    }

    @Test
    void places_are_gone_to_in_the_order_of_the_walk_and_a_place_left_only_when_it_is_worth_several_times_any_other() {
        List<Check> checks = List.of(check("under", "pit", 5, 0.5), check("seat", "cab", 5, 0.2));
        List<Check> again = List.of(check("under", "pit", 5, 0.3), check("seat", "cab", 5, 0.6));
        List<Check> suspicion = List.of(check("under", "pit", 5, 0.1), check("seat", "cab", 5, 0.9));
        Hands leftTheCab = new Hands(Set.of("cab", "pit"), Optional.empty(), Set.of("cab"));

        assertThat(ids(planner.plan(checks, DOUBT, open("cab", "pit")))).startsWith("seat");
        assertThat(ids(planner.plan(again, DOUBT, leftTheCab))).startsWith("under");
        assertThat(ids(planner.plan(suspicion, DOUBT, leftTheCab))).startsWith("seat");
    }

    @Test
    void two_checks_of_the_same_doubt_are_worth_less_than_twice_one_and_never_more_than_the_doubt() {
        List<Check> same = List.of(check("a", "cab", 1, 0.8), check("b", "cab", 1, 0.8));

        Visit visit = planner.plan(same, DOUBT, Hands.off()).get(0);

        assertThat(visit.bits()).isCloseTo(0.8 + 0.2 * 0.8, within(1e-12)).isLessThan(1.0);
    }

    @Test
    void nothing_to_check_gives_no_visit() {
        assertThat(planner.plan(List.of(), DOUBT, Hands.off())).isEmpty();
        assertThat(planner.next(List.of(), DOUBT, Hands.off())).isEmpty();
    }

    @Test
    void work_on_the_way_is_paid_for_what_is_not_open_yet() {
        assertThat(planner.openMinutes("bench", Hands.off())).isEqualTo(10 + 120 + 60);
        assertThat(planner.openMinutes("bench", open("pit"))).isEqualTo(120 + 60);
        assertThat(planner.openMinutes("bench", open("pit", "rear", "bench"))).isZero();
    }

    @Test
    void a_place_is_behind_a_teardown_until_that_is_done() {
        assertThat(planner.takesApart("gauges", Hands.off())).isFalse();
        assertThat(planner.takesApart("bench", Hands.off())).isTrue();
        assertThat(planner.takesApart("bench", open("pit", "rear", "bench"))).isFalse();
    }

    @Test
    void a_way_goes_on_inside_only_what_is_apart_already() {
        assertThat(planner.goesOnInside("bench", open("pit", "rear"))).isTrue();
        assertThat(planner.goesOnInside("bench", open("pit"))).isFalse();
        assertThat(planner.goesOnInside("bench", Hands.off())).isFalse();
        assertThat(planner.goesOnInside("bench", open("pit", "rear", "bench"))).isFalse();
        assertThat(planner.goesOnInside("gauges", open("pit"))).isFalse();
    }

    @Test
    void hands_that_go_on_leave_the_place_they_were_at_and_no_longer_the_one_they_come_back_to() {
        Hands back = new Hands(Set.of("cab"), Optional.of("cab"), Set.of("gauges"))
                .movedTo("gauges", List.of("pit", "gauges"));

        assertThat(back).isEqualTo(new Hands(Set.of("cab", "pit", "gauges"), Optional.of("gauges"), Set.of("cab")));
        assertThat(Hands.off().movedTo("cab", List.of("cab")).left()).isEmpty();
    }

    @Test
    void bits_for_a_minute_count_the_opening_the_work_and_three_minutes_for_each_question() {
        Visit visit = new Visit(
                "pit", List.of("pit"), 10, List.of(check("a", "pit", 5, 1), check("b", "pit", 5, 1)), 10, 0.52);

        assertThat(visit.minutes()).isEqualTo(20);
        assertThat(visit.rate()).isCloseTo(0.52 / 26, within(1e-12));
    }

    @Test
    void what_a_conclusion_waits_for_is_worth_that_besides() {
        List<Check> one = List.of(new Check("a", "cab", 1, BOTH, new double[] {0.3, 0}, 0.2));

        assertThat(planner.plan(one, DOUBT, Hands.off()).get(0).bits()).isCloseTo(0.5, within(1e-12));
    }

    @Test
    void a_check_takes_its_share_of_the_doubt_whatever_its_size() {
        // Half a bit of two is a quarter: the second takes a quarter of the 1.5 bit left.
        List<Check> same = List.of(check("a", "cab", 1, 0.5), check("b", "cab", 1, 0.5));

        Visit visit = planner.plan(same, new double[] {2.0, 1.0}, Hands.off()).get(0);

        assertThat(visit.bits()).isCloseTo(0.5 + 0.25 * 1.5, within(1e-12));
    }

    @Test
    void a_visit_ends_where_one_more_check_brings_no_more_a_minute() {
        // In the open cab: 0.5 bit in 8 min, then 0.75 bit in 16; of two doubts 1.0 bit in 16, which is no more.
        List<Check> same = List.of(check("a", "cab", 5, 0.5), check("b", "cab", 5, 0.5));
        List<Check> apart =
                List.of(check("a", "cab", 5, 0.5), new Check("b", "cab", 5, BOTH, new double[] {0, 0.5}, 0));

        assertThat(planner.next(same, DOUBT, open("cab")).orElseThrow().checks())
                .hasSize(1);
        assertThat(planner.next(apart, DOUBT, open("cab")).orElseThrow().checks())
                .hasSize(1);
    }

    @Test
    void in_a_place_the_check_that_tells_more_a_minute_comes_first_whatever_it_is_called() {
        List<Check> checks = List.of(check("a-long", "cab", 30, 0.6), check("b-short", "cab", 1, 0.5));

        assertThat(ids(planner.plan(checks, DOUBT, Hands.off()))).containsExactly("b-short", "a-long");
    }

    @Test
    void on_the_way_in_the_outer_check_is_made_first_though_it_tells_less_a_minute() {
        // At the gauges 0.9 + 0.9 and 0.05 + 0.9 bit for 25 + 4 + 4 min; the pit's 0.27 bit adds 3 min on the way and
        // raises
        // that to 0.0839 a minute, while going to the pit alone comes to 0.27 / 13, less than a quarter.
        List<Check> checks = List.of(
                check("z-outer", "pit", 0, 0.27),
                new Check("a-inner", "gauges", 1, BOTH, new double[] {0, 0.9}, 0.9),
                new Check("b-inner", "gauges", 1, BOTH, new double[] {0, 0.5}, 0.9));

        Visit visit = planner.next(checks, DOUBT, Hands.off()).orElseThrow();

        assertThat(visit.place()).isEqualTo("gauges");
        assertThat(visit.checks()).extracting(Check::id).containsExactly("z-outer", "a-inner", "b-inner");
    }

    @Test
    void a_cover_that_is_off_within_the_hour_comes_before_the_gearbox_is_out_however_much_that_tells() {
        List<Check> checks = List.of(check("out", "rear", 1, 0.95), check("cover", "housing", 30, 0.06));

        assertThat(ids(planner.plan(checks, DOUBT, Hands.off()))).containsExactly("cover", "out");
    }

    @Property
    void the_work_of_all_visits_is_that_of_all_checks_and_they_are_worth_no_more_than_the_doubt(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int n) {
        List<Check> checks = drawn(seed, n);

        List<Visit> plan = planner.plan(checks, DOUBT, Hands.off());

        assertThat(plan.stream().mapToDouble(Visit::checkMinutes).sum())
                .isCloseTo(checks.stream().mapToDouble(Check::minutes).sum(), within(1e-9));
        double released = checks.stream().mapToDouble(Check::release).sum();
        assertThat(plan).allSatisfy(v -> assertThat(v.bits()).isBetween(0.0, 2 + released));
    }

    @Property
    void every_place_is_paid_once_and_every_check_made_once(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int n) {
        List<Check> checks = drawn(seed, n);

        List<Visit> plan = planner.plan(checks, DOUBT, Hands.off());

        Set<String> needed = new HashSet<>();
        checks.forEach(c -> needed.addAll(planner.wayTo(c.place())));
        double once = needed.stream().mapToDouble(p -> PLACES.get(p).minutes()).sum();
        assertThat(plan.stream().mapToDouble(Visit::openMinutes).sum()).isCloseTo(once, within(1e-9));
        assertThat(ids(plan))
                .containsExactlyInAnyOrderElementsOf(
                        checks.stream().map(Check::id).toList());
    }

    @Property
    void no_check_is_made_before_its_place_is_open(@ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int n) {
        Set<String> open = new HashSet<>();
        for (Visit visit : planner.plan(drawn(seed, n), DOUBT, Hands.off())) {
            open.addAll(visit.opening());
            assertThat(visit.checks()).allSatisfy(c -> assertThat(open).containsAll(planner.wayTo(c.place())));
        }
    }

    @Property
    void the_order_in_which_checks_are_given_does_not_matter(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 40) int n) {
        List<Check> checks = drawn(seed, n);
        List<Check> shuffled = new ArrayList<>(checks);
        Collections.shuffle(shuffled, new Random(seed));

        assertThat(ids(planner.plan(shuffled, DOUBT, Hands.off())))
                .isEqualTo(ids(planner.plan(checks, DOUBT, Hands.off())));
    }

    private static List<Check> drawn(long seed, int n) {
        Random random = new Random(seed);
        List<String> places = List.copyOf(PLACES.keySet());
        List<Check> checks = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            checks.add(new Check(
                    "check-" + i,
                    places.get(random.nextInt(places.size())),
                    random.nextInt(30),
                    BOTH,
                    new double[] {random.nextDouble() * 0.5, random.nextDouble() * 0.5},
                    random.nextInt(5) == 0 ? 0.1 : 0));
        }
        return checks;
    }
}
