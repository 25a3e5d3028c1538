package witnessmark.gearbox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class TruckDraftTest {

    private static List<String> faults(TruckDraft draft) {
        return draft.faults().stream().map(ProfileFault::text).toList();
    }

    @Test
    void what_is_not_given_is_assumed_and_says_how_sure() {
        TruckProfile truck = SampleTrucks.splitHigh().build();

        assertThat(truck.figure(Parameter.AXLE_RATIO)).isEqualTo(Figure.given(3.5, Unit.RATIO));
        assertThat(truck.figure(Parameter.IDLE_RPM))
                .isEqualTo(Figure.assumed(600, Unit.RPM, "usual for a heavy diesel"));
        assertThat(truck.value(Parameter.LOWEST_PULLING_RPM)).isEqualTo(1100);
        assertThat(truck.figures().values())
                .filteredOn(figure -> figure.basis() == Basis.ASSUMED)
                .allSatisfy(figure -> assertThat(figure.note()).isNotBlank());
        assertThat(truck.torque().basis()).isEqualTo(Basis.ASSUMED);
    }

    @Test
    void pounds_and_revolutions_per_mile_are_taken() {
        TruckProfile truck = SampleTrucks.splitHigh()
                .set(Parameter.MASS_LOADED, 80_000, Unit.POUND)
                .set(Parameter.TYRE_REVS, 502, Unit.REVOLUTION_PER_MILE)
                .build();

        assertThat(truck.value(Parameter.MASS_LOADED)).isCloseTo(36_287.39, within(0.01));
        assertThat(truck.value(Parameter.TYRE_REVS)).isCloseTo(311.9283385, within(1e-6));
    }

    @Test
    void the_torque_curve_is_straight_between_its_points_and_gives_the_peak() {
        TruckProfile truck = SampleTrucks.splitHigh()
                .torqueCurve(Map.of(1000.0, 1800.0, 1200.0, 2000.0, 2000.0, 1400.0))
                .build();

        assertThat(truck.torque().atRpm(1100)).isEqualTo(1900);
        assertThat(truck.torque().atRpm(500)).isEqualTo(900);
        assertThat(truck.torque().atRpm(2500)).isEqualTo(1400);
        assertThat(truck.torque().lowestRpmGiving(1900)).hasValue(1100);
        assertThat(truck.torque().lowestRpmGiving(2100)).isEmpty();
        assertThat(truck.value(Parameter.PEAK_TORQUE)).isEqualTo(2000);
    }

    /** Rolling circumference 3.05 times the diameter for a radial: European tyre standards, from memory. */
    @Test
    void a_tyre_size_gives_revolutions() {
        TyreSize metric = TyreSize.parse("295/80 R 22.5 152/148M").orElseThrow();
        TyreSize inch = TyreSize.parse("11R22.5").orElseThrow();

        assertThat(metric.outerDiameterMm()).isCloseTo(22.5 * 25.4 + 2 * 0.8 * 295, within(1e-9));
        assertThat(metric.revsPerKm().value()).isCloseTo(314.202, within(0.001));
        assertThat(metric.revsPerKm().basis()).isEqualTo(Basis.ASSUMED);
        assertThat(inch.aspectAssumed()).isTrue();
        assertThat(inch.revsPerKm().value()).isBetween(305.0, 320.0);
    }

    @Test
    void a_layout_comes_out_of_the_ratios() {
        Layout layout = SampleTrucks.splitBoth().build().layout();

        assertThat(layout.forwardRatios()).hasValue(18);
        assertThat(layout.splitter()).contains(Layout.Splitter.BOTH);
    }

    private static List<String> questions(TruckDraft draft) {
        return draft.build().questions().stream().map(ProfileFault::text).toList();
    }

    /** Bounds are judgement for a heavy truck, common practice, no source. */
    @Nested
    class Questions {

        @Test
        void an_ordinary_truck_is_not_asked_about() {
            assertThat(questions(SampleTrucks.splitHigh())).isEmpty();
            assertThat(questions(SampleTrucks.splitBoth())).isEmpty();
        }

        @Test
        void turns_of_the_wheel_that_look_like_turns_in_a_mile() {
            assertThat(questions(SampleTrucks.splitHigh().set(Parameter.TYRE_REVS, 503)))
                    .containsExactly(
                            "tyre.revs-per-km: 503 turns in a kilometre are unusual, a truck's drive wheel makes"
                                    + " 250 to 420 rev/km; is it per mile? then give it as tyre.revs-per-mile");
            assertThat(questions(SampleTrucks.splitHigh().set(Parameter.TYRE_REVS, 503, Unit.REVOLUTION_PER_MILE)))
                    .isEmpty();
        }

        @ParameterizedTest
        @CsvSource({"250, 0", "249.9, 1", "420, 0", "420.1, 1"})
        void turns_of_the_wheel_at_their_bounds(double revs, int questions) {
            assertThat(questions(SampleTrucks.splitHigh().set(Parameter.TYRE_REVS, revs)))
                    .hasSize(questions);
        }

        @Test
        void a_tiny_tyre_by_its_size() {
            TruckDraft draft = TruckDraft.named("small")
                    .mainRatios(List.of(6.0, 1.0))
                    .tyreSize("205/65R17.5")
                    .set(Parameter.AXLE_RATIO, 4)
                    .set(Parameter.GOVERNED_RPM, 2000);

            assertThat(questions(draft)).singleElement().asString().startsWith("tyre.size: ");
        }

        @Test
        void a_clutch_that_slips_at_full_torque() {
            assertThat(questions(SampleTrucks.splitHigh().set(Parameter.CLUTCH_CAPACITY, 1999)))
                    .singleElement()
                    .asString()
                    .startsWith("clutch.capacity-nm: 1999 Nm is below the engine's peak torque, 2000 Nm");
            assertThat(questions(SampleTrucks.splitHigh().set(Parameter.CLUTCH_CAPACITY, 2000)))
                    .isEmpty();
        }

        @Test
        void a_curve_that_begins_above_the_speed_of_a_start() {
            TruckDraft draft = SampleTrucks.splitHigh().torqueCurve(Map.of(1000.0, 1800.0, 2000.0, 1500.0));

            assertThat(questions(draft))
                    .singleElement()
                    .asString()
                    .startsWith("engine.torque-curve: it begins at 1000 rpm");
        }

        @Test
        void every_parameter_out_of_the_ordinary_and_still_reckons_with_it() {
            TruckProfile truck = SampleTrucks.splitHigh()
                    .set(Parameter.AXLE_RATIO, 12)
                    .set(Parameter.CONE_FRICTION, 0.4)
                    .set(Parameter.MAINSHAFT_INERTIA, 6)
                    .build();

            assertThat(truck.questions())
                    .extracting(ProfileFault::where)
                    .containsExactly("axle-ratio", "inertias.mainshaft-kgm2", "cone.friction");
            assertThat(truck.value(Parameter.AXLE_RATIO)).isEqualTo(12);
        }

        @ParameterizedTest
        @EnumSource(Parameter.class)
        void what_is_assumed_is_usual_and_what_is_usual_is_possible(Parameter parameter) {
            assertThat(parameter.accepts(parameter.bounds().usualLeast())).isTrue();
            assertThat(parameter.accepts(parameter.bounds().usualMost())).isTrue();
            double assumed = parameter.assumption(SampleTrucks.splitHigh());
            assertThat(Double.isNaN(assumed) || parameter.isUsual(assumed)).isTrue();
        }

        /** Spread 4 / 1, step 1 / 0.8 = 1.25: low and high range meet at 5; by hand. */
        @ParameterizedTest
        @CsvSource({
            "5.01, 0.8, true, 0",
            "4.99, 0.8, true, 1",
            "4.99, 0.8, false, 0",
            "5.01, 1.25, false, 0",
            "4.99, 1.25, false, 1"
        })
        void a_splitter_that_makes_the_ranges_overlap(double range, double splitter, boolean both, int questions) {
            TruckProfile truck = TruckDraft.named("overlap")
                    .mainRatios(List.of(4.0, 2.5, 1.6, 1.0))
                    .splitter(splitter, both)
                    .set(Parameter.RANGE_RATIO, range)
                    .set(Parameter.AXLE_RATIO, 4)
                    .set(Parameter.TYRE_REVS, 312)
                    .set(Parameter.GOVERNED_RPM, 2000)
                    .build();

            assertThat(truck.questions())
                    .filteredOn(question -> question.text().contains("overlap"))
                    .hasSize(questions);
        }

        @Test
        void a_ratio_or_splitter_out_of_the_ordinary() {
            assertThat(questions(SampleTrucks.splitHigh().mainRatios(List.of(1.6, 1.15, 0.82, 0.59))))
                    .singleElement()
                    .asString()
                    .startsWith("gearbox.main-ratios: 0.59 is unusual");
            assertThat(questions(SampleTrucks.splitHigh().splitter(0.95, false)))
                    .containsExactly(
                            "gearbox.splitter.ratio: 0.95 is unusual: a splitter step is mostly 1.1 to 1.45; is it right?");
        }
    }

    @Nested
    class Refusals {

        @Test
        void a_bore_that_does_not_go_over_the_shaft() {
            assertThat(faults(SampleTrucks.splitHigh().set(Parameter.GEAR_BORE, 60)))
                    .containsExactly(
                            "shafts.gear-bore-mm: 60 mm does not go over the mainshaft, 60 mm at the spline root;"
                                    + " give the diameter on which the floating gears rub, or leave it out to have it assumed");
            assertThat(faults(SampleTrucks.splitHigh().set(Parameter.GEAR_BORE, 61)))
                    .isEmpty();
            assertThat(SampleTrucks.splitHigh()
                            .set(Parameter.MAINSHAFT_DIAMETER, 75)
                            .build()
                            .value(Parameter.GEAR_BORE))
                    .isEqualTo(88);
        }

        @Test
        void every_fault_is_named_at_once_with_its_mend() {
            TruckDraft draft = TruckDraft.named("Bad Name")
                    .mainRatios(List.of(2.0, 0.0, 2.5))
                    .set(Parameter.AXLE_RATIO, 37)
                    .set(Parameter.IDLE_RPM, Double.NaN);

            assertThat(faults(draft))
                    .containsExactly(
                            "truck: this name cannot be used; use lower-case words and numbers joined by hyphens,"
                                    + " at most 60 characters",
                            "gearbox.main-ratios[2]: ratio 0 is not from 0.3 to 30; give input turns to one mainshaft"
                                    + " turn, from the tooth counts",
                            "gearbox.main-ratios[3]: ratio 2.5 is not below the 0 before it; give the ratios highest"
                                    + " number first, each once",
                            "tyre: no tyre is given; give revs-per-km, revs-per-mile, or size as on the side wall:"
                                    + " 295/80R22.5",
                            "axle-ratio: 37 is not from 1 to 20; give turns of the driveline to one turn of the"
                                    + " wheels, 1 to 20",
                            "engine.governed-rpm: missing; give governed engine speed, 500 to 6000 rpm",
                            "engine.idle-rpm: NaN is not from 250 to 1500 rpm; give idle speed, 250 to 1500 rpm, or"
                                    + " leave it out to have it assumed");
            assertThatThrownBy(draft::build).isInstanceOf(ProfileRefused.class).hasMessageContaining("axle-ratio: 37");
        }

        @Test
        void steps_that_do_not_descend_are_refused() {
            assertThat(faults(SampleTrucks.splitHigh().mainRatios(List.of(2.744, 1.4, 1.96, 1.0))))
                    .containsExactly(
                            "gearbox.main-ratios[3]: ratio 1.96 is not below the 1.4 before it; give the ratios"
                                    + " highest number first, each once");
            assertThat(faults(SampleTrucks.splitHigh().mainRatios(List.of())))
                    .containsExactly("gearbox.main-ratios: 0 ratios given; give 1 to 12 ratios, highest number first");
        }

        @Test
        void a_range_that_overlaps_is_refused() {
            assertThat(faults(SampleTrucks.splitHigh().set(Parameter.RANGE_RATIO, 2.5)))
                    .containsExactly("gearbox.range-ratio: 2.5 is not above the spread of the main ratios, first over"
                            + " last, 2.744, so that low and high range would overlap; check the range ratio and the"
                            + " main ratios against the tooth counts");
        }

        @Test
        void a_splitter_that_does_not_split_is_refused() {
            assertThat(faults(SampleTrucks.splitHigh().splitter(1, true)))
                    .containsExactly("gearbox.splitter.ratio: 1 is not a splitter ratio; give 0.5 to below 1 for an"
                            + " overdrive, above 1 to 2 for an underdrive, or leave the splitter out");
            assertThat(faults(SampleTrucks.splitHigh().splitter(0.6, true)))
                    .containsExactly("gearbox.splitter.ratio: 0.6 makes a bigger step than the lever does between two"
                            + " gears; check it and the main ratios: a split step is about the square root of a lever"
                            + " step");
        }

        @Test
        void a_low_gear_that_is_not_low_is_refused() {
            assertThat(faults(SampleTrucks.splitHigh().set(Parameter.LOW_RATIO, 2.7)))
                    .containsExactly("gearbox.low-ratio: 2.7 is not above the first main ratio 2.744; give the ratio of"
                            + " the extra low gear, or leave it out where the box has none");
        }

        @Test
        void engine_speeds_out_of_order_are_refused() {
            assertThat(faults(SampleTrucks.splitHigh().set(Parameter.IDLE_RPM, 1200)))
                    .containsExactly("engine.idle-rpm: 1200 rpm is not below engine.lowest-pulling-rpm 1100; give idle,"
                            + " lowest pulling and governed speed in rising order");
            assertThat(faults(SampleTrucks.splitHigh().set(Parameter.START_RPM, 500)))
                    .containsExactly("engine.start-rpm: 500 rpm does not lie between idle 600 and governed 2000 rpm;"
                            + " give the engine speed held while the clutch slips");
        }

        @Test
        void a_torque_curve_that_contradicts_the_peak_is_refused() {
            assertThat(faults(SampleTrucks.splitHigh()
                            .torqueCurve(Map.of(1000.0, 1800.0, 1200.0, 2000.0))
                            .set(Parameter.PEAK_TORQUE, 2500)))
                    .containsExactly("engine.peak-torque-nm: 2500 Nm is not the peak of the torque curve, 2000 Nm; give"
                            + " one of the two, or make them agree");
            assertThat(faults(SampleTrucks.splitHigh().torqueCurve(Map.of(1000.0, -5.0))))
                    .containsExactly(
                            "engine.torque-curve: point 1000 rpm: -5 Nm is out of bounds; give 250 to 6000 rpm and 50 to"
                                    + " 10000 Nm",
                            "engine.torque-curve: one point is no curve; give two points or more, or peak-torque-nm"
                                    + " instead");
        }

        @Test
        void two_tyres_or_a_wrong_size_are_refused() {
            assertThat(faults(SampleTrucks.splitHigh().tyreSize("295/80R22.5")))
                    .containsExactly(
                            "tyre: both a size and revolutions are given; give one; revolutions are the surer");
            assertThat(faults(SampleTrucks.splitHigh().tyreSize("big")))
                    .contains("tyre.size: 'big' is not a radial tyre size; write it as 295/80R22.5 or 11R22.5, or give"
                            + " revs-per-km");
        }

        @Test
        void empty_heavier_than_loaded_is_refused() {
            assertThat(faults(SampleTrucks.splitHigh().set(Parameter.MASS_EMPTY, 40_000)))
                    .containsExactly("masses.empty-kg: 40000 kg is more than the loaded mass, 36000 kg; give the whole"
                            + " truck and trailer, empty and loaded");
        }
    }
}
