package witnessmark.triplog.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.triplog.InventedTrucks;
import witnessmark.triplog.gear.SpeedFactor;

/** Each figure from both sides; what the figures keep apart was read from logs of one box with the ratios of another. */
class DoubtRatiosTest {
    private static final SpeedFactor FITTING = new SpeedFactor(1, 1000, 0.97, false, false);

    private final Map<String, Double> hours = new HashMap<>();

    private void inHand(String gear, double seconds) {
        hours.put(gear, seconds / 3600);
    }

    private List<String> doubts() {
        return DoubtRatios.of("trip.csv", FITTING, InventedTrucks.eighteen(), hours);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.951, 1, 1.049})
    void a_tyre_explains_five_per_cent(double factor) {
        SpeedFactor known = new SpeedFactor(factor, 1000, 0.97, false, false);

        assertThat(DoubtRatios.of("trip.csv", known, InventedTrucks.eighteen(), hours))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.949, 1.051})
    void beyond_five_per_cent_it_may_be_another_truck(double factor) {
        SpeedFactor known = new SpeedFactor(factor, 1000, 0.97, false, false);

        assertThat(DoubtRatios.of("trip.csv", known, InventedTrucks.eighteen(), hours))
                .containsExactly(
                        "the ratios of 'trip.csv' fit only if road speed is 5 % off: another gearbox, axle or tyre");
    }

    @Test
    void a_factor_that_too_few_rows_give_raises_none() {
        SpeedFactor unknown = new SpeedFactor(1.09, 59, 0.97, false, false);

        assertThat(DoubtRatios.of("trip.csv", unknown, InventedTrucks.eighteen(), hours))
                .isEmpty();
    }

    @Test
    void whole_ratios_that_hardly_appear_in_most_positions_raise_a_doubt() {
        for (String position : List.of("4", "5", "6")) {
            inHand(position, 9);
            inHand(position + "-over", 100);
        }
        inHand("7", 60);
        inHand("8", 80);

        assertThat(doubts())
                .containsExactly("in 'trip.csv' 3 of 5 lever positions were driven in by their split alone, the whole"
                        + " ratio hardly appears: another gearbox that happens to fit");
    }

    @Test
    void whole_ratios_that_are_passed_on_the_way_raise_none() {
        for (String position : List.of("4", "5", "6")) {
            inHand(position, 11);
            inHand(position + "-over", 100);
        }

        assertThat(doubts()).isEmpty();
    }

    @Test
    void two_splits_that_were_cruised_in_raise_none() {
        inHand("7-over", 4000);
        inHand("7", 20);
        inHand("8-over", 9000);
        inHand("8", 30);

        assertThat(doubts()).isEmpty();
    }

    @Test
    void as_many_positions_driven_in_by_their_whole_ratio_raise_none() {
        for (String position : List.of("4", "5", "6")) {
            inHand(position + "-over", 100);
        }
        for (String position : List.of("1", "2", "3")) {
            inHand(position, 100);
        }
        assertThat(doubts()).isEmpty();

        inHand("3", 19);
        assertThat(doubts()).hasSize(1);
    }

    @Test
    void a_box_without_a_splitter_has_no_such_doubt() {
        inHand("10", 4000);

        assertThat(DoubtRatios.of("trip.csv", FITTING, InventedTrucks.ten(), hours))
                .isEmpty();
    }
}
