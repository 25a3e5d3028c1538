package witnessmark.triplog.gear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import witnessmark.gearbox.TruckProfile;
import witnessmark.triplog.InventedTrucks;
import witnessmark.truck.ReadyTrucks;
import witnessmark.truck.TruckYaml;

class TabulateGearsTest {
    /** Underdrive split on both ranges; masses assumed. */
    private static final String ODD =
            """
            truck: odd
            gearbox:
              main-ratios: [2.50, 1.60, 1.00]
              range-ratio: 4.00
              splitter: { ratio: 1.25, splits: both }
              reverse-ratio: 2.40
            axle-ratio: 4.20
            tyre: { revs-per-km: 300 }
            engine: { idle-rpm: 600, governed-rpm: 2000, peak-torque-nm: 1800 }
            """;

    private static final String NO_RANGE =
            """
            truck: plain
            gearbox: { main-ratios: [7.0, 4.0, 2.5, 1.5, 1.0], reverse-ratio: 6.5 }
            axle-ratio: 4.20
            tyre: { revs-per-km: 300 }
            engine: { idle-rpm: 600, governed-rpm: 2000, peak-torque-nm: 1800 }
            """;

    private static GearTable table(String yaml) {
        return TabulateGears.of(TruckYaml.read("truck.yaml", yaml));
    }

    @Test
    void a_profile_gives_the_table_that_was_written_by_hand_for_the_same_truck() {
        GearTable drawn = TabulateGears.of(ReadyTrucks.named("thirteen-ratio"));
        GearTable byHand = InventedTrucks.thirteen();

        assertThat(drawn.gears()).hasSize(16);
        for (KnobGear gear : byHand.gears()) {
            assertThat(drawn.gears())
                    .filteredOn(g -> g.lever() == gear.lever()
                            && g.range() == gear.range()
                            && (g.splitter() == KnobGear.Splitter.OVERDRIVE)
                                    == (gear.splitter() == KnobGear.Splitter.OVERDRIVE))
                    .singleElement()
                    .satisfies(g -> assertThat(g.ratio()).isCloseTo(gear.ratio(), within(1e-9)));
        }
        assertThat(drawn.outputRpmPerKmh()).isEqualTo(byHand.outputRpmPerKmh());
        assertThat(drawn.lowRangeCeilingKmh().orElseThrow())
                .isCloseTo(byHand.lowRangeCeilingKmh().orElseThrow(), within(1e-9));
        assertThat(drawn.governedRpm()).isEqualTo(2000);
        assertThat(drawn.rangeStep()).isEqualTo(3.84);
        assertThat(drawn.splitterRatio()).contains(0.85);
    }

    @Test
    void start_gears_come_from_the_physics_only_where_the_masses_are_given() {
        TruckProfile given = ReadyTrucks.named("thirteen-ratio");

        assertThat(TabulateGears.of(given).highestStartGear()).contains(new GearTable.StartGears("1", "3"));
        assertThat(table(ODD).highestStartGear()).isEmpty();
    }

    @Test
    void an_underdrive_on_both_ranges_is_told_from_an_overdrive() {
        GearTable table = table(ODD);

        assertThat(table.gears()).hasSize(16);
        assertThat(table.gears())
                .filteredOn(g -> g.name().equals("3u"))
                .singleElement()
                .satisfies(g -> {
                    assertThat(g.ratio()).isCloseTo(1.00 * 4.00 * 1.25, within(1e-9));
                    assertThat(g.splitter()).isEqualTo(KnobGear.Splitter.UNDERDRIVE);
                    assertThat(table.mainRatio(g)).isCloseTo(1.00, within(1e-9));
                });
        assertThat(table.hasOverdriveSplit()).isFalse();
    }

    @Test
    void a_box_without_a_range_has_neither_low_nor_high() {
        GearTable table = table(NO_RANGE);

        assertThat(table.hasRange()).isFalse();
        assertThat(table.rangeStep()).isEqualTo(1);
        assertThat(table.gears()).extracting(KnobGear::range).containsOnly(KnobGear.Range.NONE);
        assertThat(table.gears().stream().filter(KnobGear::isReverse).map(KnobGear::name))
                .containsExactly("R");
    }
}
