package witnessmark.gearbox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a truck profile refuses or asks about, at each bound and just beyond. The bounds are judgement of our own, common
 * practice, no source.
 */
class ProfileBoundsTest {

    private static boolean refuses(TruckDraft draft, String what) {
        return draft.faults().stream().anyMatch(fault -> fault.text().contains(what));
    }

    private static boolean asks(TruckDraft draft, String what) {
        return draft.build().questions().stream()
                .anyMatch(question -> question.text().contains(what));
    }

    @ParameterizedTest
    @CsvSource({"30, false", "30.1, true", "0.3, false", "0.29, true"})
    void a_main_ratio(double ratio, boolean refused) {
        assertThat(refuses(SampleTrucks.splitHigh().mainRatios(List.of(ratio)), "is not from 0.3 to 30"))
                .isEqualTo(refused);
    }

    @ParameterizedTest
    @CsvSource({"60, false", "61, true"})
    void a_name(int letters, boolean refused) {
        TruckDraft draft = TruckDraft.named("t".repeat(letters));
        assertThat(refuses(draft, "this name cannot be used")).isEqualTo(refused);
    }

    @ParameterizedTest
    @CsvSource({"120, false", "121, true"})
    void a_title(int letters, boolean refused) {
        TruckDraft draft = SampleTrucks.splitHigh().title("t".repeat(letters));
        assertThat(refuses(draft, "this title cannot be used")).isEqualTo(refused);
    }

    @ParameterizedTest
    @CsvSource({"2.744, true", "2.75, false"})
    void an_extra_low_gear_above_the_first(double low, boolean refused) {
        TruckDraft draft = SampleTrucks.splitHigh().set(Parameter.LOW_RATIO, low);
        assertThat(refuses(draft, "is not above the first main ratio")).isEqualTo(refused);
    }

    @ParameterizedTest
    @CsvSource({"2.744, true", "2.75, false"})
    void a_range_above_the_spread_of_the_main_ratios(double range, boolean refused) {
        TruckDraft draft = SampleTrucks.splitHigh().set(Parameter.RANGE_RATIO, range);
        assertThat(refuses(draft, "low and high range would overlap")).isEqualTo(refused);
    }

    @ParameterizedTest
    @CsvSource({"0.5, false", "0.49, true", "2, false", "2.01, true", "1, true"})
    void a_splitter_ratio(double ratio, boolean refused) {
        TruckDraft draft = SampleTrucks.splitHigh().splitter(ratio, false);
        assertThat(refuses(draft, "is not a splitter ratio")).isEqualTo(refused);
    }

    /** The smallest lever step of the sample is 1.4. */
    @ParameterizedTest
    @CsvSource({"1.41, true", "1.39, false"})
    void a_splitter_step_below_the_lever_step(double ratio, boolean refused) {
        TruckDraft draft = SampleTrucks.splitHigh().splitter(ratio, false);
        assertThat(refuses(draft, "makes a bigger step than the lever")).isEqualTo(refused);
    }

    @ParameterizedTest
    @CsvSource({
        "250, 1500, false", "249, 1500, true", "6000, 1500, false", "6001, 1500, true",
        "1000, 50, false", "1000, 49, true", "1000, 10000, false", "1000, 10001, true"
    })
    void a_point_of_the_torque_curve(double rpm, double newtonMetres, boolean refused) {
        TruckDraft draft = SampleTrucks.splitHigh().torqueCurve(Map.of(rpm, newtonMetres, 1200.0, 2000.0));
        assertThat(refuses(draft, "is out of bounds")).isEqualTo(refused);
    }

    @ParameterizedTest
    @CsvSource({"1960, false", "1959, true", "2040, false", "2041, true"})
    void a_peak_beside_the_curve(double ofCurve, boolean refused) {
        TruckDraft draft = SampleTrucks.splitHigh()
                .set(Parameter.PEAK_TORQUE, 2000)
                .torqueCurve(Map.of(1000.0, 1500.0, 1200.0, ofCurve));
        assertThat(refuses(draft, "is not the peak of the torque curve")).isEqualTo(refused);
    }

    @ParameterizedTest
    @CsvSource({"600, false", "599, true", "1999, false", "2000, true"})
    void the_speed_held_at_a_start(double rpm, boolean refused) {
        TruckDraft draft = SampleTrucks.splitHigh().set(Parameter.IDLE_RPM, 600).set(Parameter.START_RPM, rpm);
        assertThat(refuses(draft, "does not lie between idle")).isEqualTo(refused);
    }

    @ParameterizedTest
    @CsvSource({"700, 700, true", "700, 701, false"})
    void idle_below_the_lowest_pulling_speed(double idle, double pulling, boolean refused) {
        TruckDraft draft =
                SampleTrucks.splitHigh().set(Parameter.IDLE_RPM, idle).set(Parameter.LOWEST_PULLING_RPM, pulling);
        assertThat(refuses(draft, "rpm is not below")).isEqualTo(refused);
    }

    @ParameterizedTest
    @CsvSource({"15, 10, false", "15.1, 10, true", "0.8, 0.6, false", "0.8, 0.59, true"})
    void an_unusual_front_ratio(double first, double last, boolean asked) {
        TruckDraft draft = SampleTrucks.splitHigh().mainRatios(List.of(first, last));
        assertThat(asks(draft, "unusual for a front ratio")).isEqualTo(asked);
    }

    @ParameterizedTest
    @CsvSource({"1.45, false", "1.46, true", "1.1, false", "1.09, true"})
    void an_unusual_splitter_step(double ratio, boolean asked) {
        TruckDraft draft = SampleTrucks.splitHigh()
                .mainRatios(List.of(4.0, 2.0, 1.0))
                .set(Parameter.RANGE_RATIO, 6)
                .splitter(ratio, false);
        assertThat(asks(draft, "a splitter step is mostly")).isEqualTo(asked);
    }

    /** Two ratios a step of 2 apart and an underdrive of 1.25 reach over 2.5. */
    @ParameterizedTest
    @CsvSource({"2.5, true", "2.51, false"})
    void split_gears_that_overlap(double range, boolean asked) {
        TruckDraft draft = SampleTrucks.splitHigh()
                .mainRatios(List.of(2.0, 1.0))
                .set(Parameter.RANGE_RATIO, range)
                .splitter(1.25, false);
        assertThat(asks(draft, "split gears of low and high range overlap")).isEqualTo(asked);
    }

    @ParameterizedTest
    @CsvSource({"120, false", "121, true"})
    void a_bore_beside_the_mainshaft(double boreMm, boolean asked) {
        TruckDraft draft =
                SampleTrucks.splitHigh().set(Parameter.MAINSHAFT_DIAMETER, 60).set(Parameter.GEAR_BORE, boreMm);
        assertThat(asks(draft, "more than twice the mainshaft")).isEqualTo(asked);
    }

    /** By hand: 1100 and 0.4 of the 900 to 2000 rpm is 1460; from there 2000 falls to 1500 Nm, half way 1750. */
    @Test
    void the_assumed_torque_curve() {
        TorqueCurve curve = SampleTrucks.splitHigh()
                .set(Parameter.IDLE_RPM, 600)
                .set(Parameter.LOWEST_PULLING_RPM, 1100)
                .set(Parameter.PEAK_TORQUE, 2000)
                .build()
                .torque();

        assertThat(curve.atRpm(600)).isCloseTo(1200, within(1e-9));
        assertThat(curve.atRpm(850)).isCloseTo(1600, within(1e-9));
        assertThat(curve.atRpm(1460)).isCloseTo(2000, within(1e-9));
        assertThat(curve.atRpm(1730)).isCloseTo(1750, within(1e-9));
        assertThat(curve.peakNm()).isEqualTo(2000);
    }
}
