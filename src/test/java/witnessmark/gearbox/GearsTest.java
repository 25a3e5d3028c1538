package witnessmark.gearbox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class GearsTest {

    private static List<String> names(List<Gear> gears) {
        return gears.stream().map(Gear::id).toList();
    }

    @Test
    void a_box_split_in_high_range_only_has_its_gears_in_order() {
        Gears gears =
                SampleTrucks.splitHigh().set(Parameter.LOW_RATIO, 4.0).build().gears();

        assertThat(names(gears.forward()))
                .containsExactly("L", "1", "2", "3", "4", "5d", "5o", "6d", "6o", "7d", "7o", "8d", "8o");
        assertThat(names(gears.reverse())).containsExactly("Rl", "Rhd", "Rho");
        assertThat(gears.named("L").ratio()).isCloseTo(4.0 * 3.4, within(1e-12));
        assertThat(gears.named("8 Overdrive").ratio()).isCloseTo(0.85, within(1e-12));
    }

    @Test
    void a_box_split_in_both_ranges_has_eighteen() {
        assertThat(names(SampleTrucks.splitBoth().build().gears().forward()))
                .containsExactly(
                        "Ld", "Lo", "1d", "1o", "2d", "2o", "3d", "3o", "4d", "4o", "5d", "5o", "6d", "6o", "7d", "7o",
                        "8d", "8o");
    }

    @Test
    void an_underdrive_is_the_slower_of_the_two() {
        assertThat(names(SampleTrucks.splitHigh()
                        .splitter(1.18, false)
                        .build()
                        .gears()
                        .forward()))
                .containsExactly("1", "2", "3", "4", "5u", "5d", "6u", "6d", "7u", "7d", "8u", "8d");
    }

    @Test
    void a_box_without_a_range_has_high_gears_only() {
        TruckProfile truck = TruckDraft.named("five")
                .mainRatios(List.of(6.0, 3.5, 2.2, 1.4, 1.0))
                .set(Parameter.AXLE_RATIO, 4)
                .set(Parameter.TYRE_REVS, 312)
                .set(Parameter.GOVERNED_RPM, 2200)
                .build();

        assertThat(names(truck.gears().forward())).containsExactly("1", "2", "3", "4", "5");
        assertThat(truck.gears().forwardIn(Range.LOW)).isEmpty();
    }

    @Test
    void an_unknown_gear_is_refused_with_the_names_there_are() {
        assertThatThrownBy(() -> SampleTrucks.splitHigh().build().gears().named("9"))
                .hasMessage(
                        "gear: '9' is not a gear of this box; give one of 1 2 3 4 5d 5o 6d 6o 7d 7o 8d 8o Rl Rhd Rho");
    }

    @Provide
    Arbitrary<TruckProfile> trucks() {
        return SampleTrucks.byTheRule();
    }

    @Property
    void every_gear_is_found_by_its_name_and_slowest_stands_first(@ForAll("trucks") TruckProfile truck) {
        Gears gears = truck.gears();

        assertThat(gears.all())
                .allSatisfy(gear -> assertThat(gears.named(gear.id())).isEqualTo(gear));
        assertThat(gears.forward()).extracting(gear -> -gear.ratio()).isSorted();
    }
}
