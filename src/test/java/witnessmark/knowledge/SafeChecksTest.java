package witnessmark.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nobody is sent to a place or a check that can hurt without its caution. Common practice, no source. */
class SafeChecksTest {
    private static final KnowledgeBase KNOWLEDGE = load();

    private static KnowledgeBase load() {
        try {
            return new KnowledgeLoader().load(List.of(KnowledgeFolder.files(Path.of("knowledge-base"))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Finding finding(String id) {
        return KNOWLEDGE.findings().get(id);
    }

    /** All that is shown when the check is advised. */
    private static Set<String> cautions(Finding finding) {
        Set<String> shown = new LinkedHashSet<>(finding.cautions());
        KNOWLEDGE.wayTo(finding.access()).forEach(step -> shown.addAll(step.cautions()));
        return shown;
    }

    private static Set<String> cautions(String finding) {
        return cautions(finding(finding));
    }

    private static List<String> places(String finding) {
        return KNOWLEDGE.wayTo(finding(finding).access()).stream()
                .map(AccessStep::id)
                .toList();
    }

    @Nested
    class Air {
        @ParameterizedTest
        @ValueSource(strings = {"exhaust-port-plugged", "cured-with-exhaust-open"})
        void a_plug_is_eased_out_only_with_the_air_drained_and_as_if_loaded(String check) {
            assertThat(cautions(check)).contains("air-stored", "plug-loaded");
            assertThat(finding(check).look()).contains("zero").contains("face");
        }

        @ParameterizedTest
        @ValueSource(strings = {"supply-air-low", "tank-pressure-low", "other-air-gear-affected"})
        void low_vehicle_air_stops_the_truck(String found) {
            assertThat(finding(found).whenFound()).contains("air-brakes-low");
        }
    }

    @Nested
    class Running {
        @Test
        void a_take_off_is_judged_with_the_pedal_up_from_a_distance_and_nothing_on_it() {
            assertThat(cautions("pto-stays-engaged")).contains("take-off-drives", "running-checks");
            assertThat(finding("pto-stays-engaged").look()).contains("pedal slowly up", "disconnected", "distance");
            assertThat(places("pto-stays-engaged")).doesNotContain("under-truck");
        }

        @Test
        void mounts_are_loaded_by_torque_from_a_station_of_their_own() {
            assertThat(cautions("mount-lifts-under-torque")).contains("mount-load");
            assertThat(places("mount-lifts-under-torque")).doesNotContain("under-truck");
            assertThat(finding("mount-movement-over").look()).contains("Engine off");
        }

        @Test
        void a_place_with_the_engine_running_says_so_and_one_without_does_not() {
            assertThat(KNOWLEDGE.access().get("engine-running").cautions()).contains("engine-in-the-cab");
            assertThat(KNOWLEDGE.access().get("cab").title()).contains("engine off");
            assertThat(KNOWLEDGE.access().get("under-truck").cautions()).doesNotContain("running-checks");
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "squeal-pedal-down-in-gear",
                    "first-reverse-grinds-at-rest",
                    "first-reverse-grind-any-wait",
                    "engine-fall-slow",
                    "noise-neutral-pedal-up"
                })
        void a_test_at_the_pedals_with_the_engine_running_has_its_caution(String check) {
            assertThat(cautions(check)).contains("engine-in-the-cab");
        }

        @ParameterizedTest
        @ValueSource(strings = {"lever-jumps-with-torque", "truck-creeps-pedal-down", "noise-reverse-loudest"})
        void a_test_that_moves_the_truck_has_its_caution_and_no_word_of_chocks_in_place(String check) {
            assertThat(cautions(check))
                    .contains("yard-moves", "road-test-licensed")
                    .doesNotContain("chock-wheels");
        }

        @Test
        void creeping_is_tried_above_the_clutch_brake_too() {
            assertThat(cautions("truck-creeps-pedal-down")).contains("creep-test");
            assertThat(finding("truck-creeps-pedal-down").look()).contains("just above");
        }
    }

    @Nested
    class Brakes {
        @Test
        void brakes_are_off_only_where_the_truck_is_held_by_something_else() {
            assertThat(cautions("brakes-drag")).contains("wheel-raised").doesNotContain("chock-wheels");
        }

        @Test
        void the_tow_sheet_holds_the_truck_first_and_releases_its_brakes_after_all_work_under_it() {
            List<String> order = new ArrayList<>(KNOWLEDGE.towing().keySet());
            assertThat(order).startsWith("tow-secure-first", "tow-law", "tow-record", "tow-trailer-coupled");
            assertThat(order.indexOf("tow-spring-brakes"))
                    .isGreaterThan(order.indexOf("tow-pull-shafts"))
                    .isGreaterThan(order.indexOf("tow-disconnect-driveline"))
                    .isGreaterThan(order.indexOf("tow-lift-all"));
        }

        @Test
        void every_cause_gives_its_reminders_in_the_order_of_the_sheet() {
            List<String> order = new ArrayList<>(KNOWLEDGE.towing().keySet());
            assertThat(KNOWLEDGE.causes().values().stream()
                            .filter(cause -> !cause.towing().isEmpty()))
                    .isNotEmpty()
                    .extracting(Cause::id, cause -> sorted(cause.towing(), order))
                    .allSatisfy(sorted -> assertThat(sorted.toList().get(1)).isEqualTo(true));
        }

        private static boolean sorted(List<String> ids, List<String> order) {
            List<Integer> places = ids.stream().map(order::indexOf).toList();
            return places.equals(places.stream().sorted().toList());
        }
    }

    @Nested
    class Oil {
        @Test
        void foam_is_looked_for_hand_warm_with_the_plug_only_cracked() {
            assertThat(finding("oil-foams").look()).contains("hand-warm", "do not take it out", "engine off");
        }

        @ParameterizedTest
        @ValueSource(strings = {"oil-in-coolant", "coolant-lost", "cooler-fails-pressure-test"})
        void coolant_is_opened_cold(String check) {
            assertThat(cautions(check)).contains("coolant-hot");
            assertThat(finding(check).look()).containsIgnoringCase("cold");
        }
    }

    @Nested
    class OffTheRoad {
        @ParameterizedTest
        @ValueSource(
                strings = {
                    "range-stays-between",
                    "range-slips-out",
                    "range-moves-on-throttle-lift",
                    "splitter-slips-out",
                    "slips-out-on-coast"
                })
        void what_drops_out_of_drive_keeps_the_truck_off_the_road(String found) {
            assertThat(finding(found).whenFound()).contains("drive-may-drop");
        }

        @ParameterizedTest
        @ValueSource(strings = {"joint-bolts-loose", "yoke-or-cross-cracked"})
        void what_may_drop_the_driveline_does_too(String found) {
            assertThat(finding(found).whenFound()).contains("shaft-may-drop");
        }

        @ParameterizedTest
        @ValueSource(strings = {"locked-in-two-gears", "magnet-tooth-piece", "case-cracked"})
        void what_may_lock_or_break_does_too(String found) {
            assertThat(finding(found).whenFound()).contains("do-not-drive");
        }
    }
}
