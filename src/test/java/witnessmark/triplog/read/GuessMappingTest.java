package witnessmark.triplog.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.signal.SignalRow;
import witnessmark.yaml.Fault;
import witnessmark.yaml.FaultyInput;

class GuessMappingTest {
    @TempDir
    private Path folder;

    private final List<double[]> rows = new ArrayList<>();

    private void keep(SignalRow row) {
        rows.add(new double[] {row.timeMicros(), row.get(Signal.ENGINE_SPEED), row.get(Signal.ROAD_SPEED)});
    }

    private void read(String text, Optional<ColumnMapping> mapping) throws IOException {
        Path file = Files.writeString(folder.resolve("log.csv"), text);
        ReadLog.read(LogHead.of(file), mapping, Progress.SILENT, this::keep);
    }

    @Test
    void units_in_brackets_and_decimal_commas_are_understood() throws IOException {
        read("Zeit;Motordrehzahl [1/min];Geschwindigkeit (mph)\n0,1;1500,5;50,0\n0,2;1501,5;50,5\n", Optional.empty());

        assertThat(rows.get(0)[0]).isEqualTo(100_000);
        assertThat(rows.get(0)[1]).isEqualTo(1500.5);
        assertThat(rows.get(0)[2]).isEqualTo(80.4672, within(1e-9));
    }

    @Test
    void decimal_commas_within_quotes_are_told_from_the_commas_that_part_the_columns() throws IOException {
        read(
                "time_s,engine rpm,km/h\n\"0,000\",\"1250,5\",\"80,0\"\n\"0,100\",\"1251,5\",\"80,2\"\n",
                Optional.empty());

        assertThat(rows).hasSize(2);
        assertThat(rows.get(1)[1]).isEqualTo(1251.5);
        assertThat(rows.get(1)[2]).isEqualTo(80.2);
    }

    @Test
    void commas_within_quotes_that_may_part_thousands_are_no_decimals() throws IOException {
        read("time_s,engine rpm,km/h\n0,\"1,250\",80\n1,\"1,260\",81\n", Optional.empty());

        assertThat(rows).hasSize(2).allSatisfy(r -> assertThat(r[1]).isNaN());
    }

    @Test
    void short_names_for_time_and_lever_are_known() throws IOException {
        ColumnMapping guessed = GuessMapping.from(
                        "log.csv", "TS\tENGINE_RPM\tVEH_MPH\tGEAR_LVR\n0.0\t1400\t40\t1\n0.1\t1401\t40\t1\n")
                .mapping();

        assertThat(guessed.time().column()).isEqualTo("TS");
        assertThat(guessed.columns().get(Signal.LEVER).column()).isEqualTo("GEAR_LVR");
    }

    @Test
    void a_line_of_units_below_the_header_is_taken_as_such() throws IOException {
        read("Timestamp,EngineSpeed,VehicleSpeed\nms,rpm,km/h\n100,1500,80\n200,1510,81\n", Optional.empty());

        assertThat(rows).hasSize(2);
        assertThat(rows.get(1)).containsExactly(200_000, 1510, 81);
    }

    @Test
    void notes_above_the_names_are_passed_over_and_counted() throws IOException {
        String notes = "Recorder 7, export; by hand\n\nVehicle, unit, 12\n";
        read(notes + "time [s];rpm;speed [km/h];acc\n0,1;1500,5;80,2;12,5\n0,2;1501,5;80,3;12,6\n", Optional.empty());
        String tabs = notes + "stamp\tEngine rpm\tSpeed\n \trpm\tkm/h\n5.0\t1400\t70\n";
        ColumnMapping guessed =
                GuessMapping.from("log.csv", tabs.replace("stamp", "time")).mapping();
        read(tabs.replace("stamp", "time"), Optional.of(guessed));

        assertThat(rows).hasSize(3);
        assertThat(rows.get(0)).containsExactly(100_000, 1500.5, 80.2);
        assertThat(rows.get(2)).containsExactly(5_000_000, 1400, 70);
        assertThat(guessed.headerLines()).isEqualTo(5);
    }

    @Test
    void dates_and_times_in_one_column_or_two_give_the_same_moment() throws IOException {
        read("datetime\tRPM\tspeed_kph\n2024-05-03T07:12:33.250Z\t1500\t80\n", Optional.empty());
        read("date;time;engine rpm;road speed\n03.05.2024;07:12:33.250;1500;80\n", Optional.empty());
        read(
                "date,time,rpm,speed\n05/13/2024,07:12:33 PM,1500,80\n",
                Optional.of(
                        ReadMapping.from(
                                "m.yaml",
                                """
                time: { column: time, form: "hh:mm:ss a", date-column: date, date-form: MM/dd/yyyy }
                columns: { engine-speed: rpm, road-speed: speed }
                """)));

        // 2024-05-03T07:12:33.250Z and 2024-05-13T19:12:33Z by java.time
        assertThat((long) rows.get(0)[0]).isEqualTo(1714720353250000L);
        assertThat((long) rows.get(1)[0]).isEqualTo(1714720353250000L);
        assertThat((long) rows.get(2)[0])
                .isEqualTo(Instant.parse("2024-05-13T19:12:33Z").getEpochSecond() * 1_000_000);
    }

    @Test
    void times_of_day_run_on_past_midnight() throws IOException {
        read("time,rpm,speed\n23:59:59.5,1500,80\n00:00:00.5,1500,80\n", Optional.empty());

        assertThat(rows.get(1)[0] - rows.get(0)[0]).isEqualTo(1_000_000);
    }

    /** ISO 8601: 08:00:00 is 28,800 s after midnight; from memory. */
    @Test
    void the_first_time_of_day_is_of_the_first_day() throws IOException {
        read("time,rpm,speed\n08:00:00,1500,80\n08:00:01,1500,80\n", Optional.empty());

        assertThat(rows.get(0)[0]).isEqualTo(28_800_000_000d);
    }

    @Test
    void what_was_assumed_is_said() {
        GuessMapping.Guess guess = GuessMapping.from("log.csv", "time,engine speed,speed\n0,900,10\n100,900,10\n");

        assertThat(guess.notes())
                .contains(
                        "time: no unit is given; steps of 100.0 were taken as milliseconds",
                        "road-speed: column 'speed' gives no unit; km/h was taken")
                // An engine speed has no other unit.
                .noneMatch(n -> n.startsWith("engine-speed"));
        assertThat(guess.preview()).hasSize(2);
    }

    @Test
    void zeros_are_no_evidence_of_shares_and_a_value_between_0_and_1_is() {
        String head = "time_s,rpm,km/h,throttle\n";

        GuessMapping.Guess idle = GuessMapping.from("log.csv", head + "0.1,650,0,0\n0.2,650,0,0\n");
        GuessMapping.Guess shares = GuessMapping.from("log.csv", head + "0.1,650,0,0\n0.2,650,0,0.4\n");

        assertThat(idle.mapping().columns().get(Signal.ACCELERATOR).factor()).isEqualTo(1);
        assertThat(idle.notes()).anyMatch(n -> n.contains("all 0, which says nothing of its unit"));
        assertThat(shares.mapping().columns().get(Signal.ACCELERATOR).factor()).isEqualTo(100);
    }

    @Test
    void a_column_that_is_named_by_its_unit_gives_its_unit() {
        GuessMapping.Guess guess = GuessMapping.from("log.csv", "time_s,rpm,km/h\n0.1,650,0\n0.2,650,0\n");

        assertThat(guess.mapping().columns()).containsOnlyKeys(Signal.ENGINE_SPEED, Signal.ROAD_SPEED);
        assertThat(guess.notes()).noneMatch(n -> n.contains("gives no unit"));
    }

    @Test
    void a_step_of_time_is_said_without_the_noise_of_binary_fractions() {
        GuessMapping.Guess guess = GuessMapping.from("log.csv", "time,rpm\n12.2,650\n12.4,651\n12.6,650\n");

        assertThat(guess.notes()).anyMatch(n -> n.contains("steps of 0.2 were taken as seconds"));
    }

    @Test
    void a_log_that_cannot_be_cut_into_rows_says_where_it_breaks() {
        assertThatThrownBy(() -> GuessMapping.from("log.csv", "time_s,rpm\n\"0.1,650\n0.2,650\n"))
                .hasMessageContaining("the quote opened in line 2 is never closed");
        assertThatThrownBy(() -> GuessMapping.from("log.csv", "time_s," + "x".repeat(20_000)))
                .hasMessageContaining("the first line is longer than 16384 characters");
        assertThatThrownBy(() -> GuessMapping.from("log.csv", "time_s,rpm\n0.1,650\n1e308,650\n0.3,650\n"))
                .hasMessageContaining("the form of '1e308' is not known");
    }

    @Test
    void a_guessed_mapping_survives_the_way_through_its_file() {
        GuessMapping.Guess guess = GuessMapping.from(
                "log.csv", "time_s;engine_rpm;speed_mph;clutch pedal [%];oil temp [F]\n0,1;900;10;3;180\n");

        ColumnMapping back = ReadMapping.from("mapping.yaml", guess.mapping().toYaml());

        assertThat(back).isEqualTo(guess.mapping());
    }

    @Test
    void every_fault_of_a_mapping_file_is_named_at_once() {
        assertThatThrownBy(
                        () -> ReadMapping.from(
                                "m.yaml",
                                """
                separator: "#"
                time: { form: sundials, zone: Moon }
                columns: { engine-speed: { column: rpm, unit: km/h }, wings: x }
                """))
                .isInstanceOfSatisfying(FaultyInput.class, e -> assertThat(e.faults())
                        .extracting(Fault::sentence)
                        .satisfiesExactly(
                                f -> assertThat(f).startsWith("m.yaml:1:12 separator: '#' is no separator"),
                                f -> assertThat(f).startsWith("m.yaml:2:7 time.column: missing; name the"),
                                f -> assertThat(f).startsWith("m.yaml:2:15 time.form: 'sundials' is no form"),
                                f -> assertThat(f).startsWith("m.yaml:2:31 time.zone: 'Moon' is not a time"),
                                f -> assertThat(f)
                                        .isEqualTo("m.yaml:3:47 columns.engine-speed.unit: 'km/h' is not a unit"
                                                + " for engine speed; use one of rpm"),
                                f -> assertThat(f).startsWith("m.yaml:3:55 'wings' is not a key of columns")));
    }

    @Test
    void a_mapping_that_does_not_fit_the_header_names_the_missing_columns() {
        ColumnMapping mapping = ReadMapping.from("m.yaml", "time: { column: t }\ncolumns: { engine-speed: n }\n");

        assertThatThrownBy(() -> read("time,rpm\n1,2\n", Optional.of(mapping)))
                .hasMessageContaining("no column 't' in the header; it has time, rpm")
                .hasMessageContaining("no column 'n'");
    }

    /** Spanish names as a recorder in that language writes them; common practice, no source. */
    @Test
    void spanish_names_of_shafts_travel_and_reverse_are_known() {
        for (Map.Entry<String, Signal> name : Map.of(
                        "Velocidad eje salida (rpm)", Signal.OUTPUT_SHAFT_SPEED,
                        "Velocidad eje entrada (rpm)", Signal.INPUT_SHAFT_SPEED,
                        "Posicion embrague (%)", Signal.CLUTCH_PEDAL,
                        "Marcha atras", Signal.REVERSE_SWITCH)
                .entrySet()) {
            assertThat(ColumnMeanings.meaning(ColumnMeanings.heading(name.getKey())))
                    .as(name.getKey())
                    .hasValueSatisfying(m -> {
                        assertThat(m.signal()).isEqualTo(name.getValue());
                        assertThat(m.sure()).isTrue();
                    });
        }
    }

    /** Abbreviations and compounds as loggers write them; common practice, no source. */
    @ParameterizedTest
    @CsvSource({
        "BRKSW, BRAKE, false",
        "CLPOS, CLUTCH_PEDAL, false",
        "Kupplungspedalweg [%], CLUTCH_PEDAL, false",
        "Getriebeöltemperatur [°C], GEARBOX_OIL, false",
        "TransOilTemp1, GEARBOX_OIL, false",
        "Prk Brk, PARKING_BRAKE, false",
        "Freno de estacionamiento, PARKING_BRAKE, false",
        "Rango alto, RANGE_KNOB, false",
        "Clutch Released, CLUTCH, true",
        "Clutch Not Pressed, CLUTCH, true",
        "PTO Off, POWER_TAKE_OFF, true",
        "Brake On/Off, BRAKE, false",
        "Range Not Low, RANGE_KNOB, asked",
        "Gearbox sump temp (C), GEARBOX_OIL, asked"
    })
    void a_name_is_taken_by_its_words_and_asked_about_where_one_is_not_known(
            String name, Signal signal, String inverted) {
        HeaderTokens.Meaning meaning =
                HeaderTokens.of(ColumnMeanings.heading(name)).orElseThrow();

        assertThat(meaning.signal()).isEqualTo(signal);
        assertThat(meaning.sure()).isEqualTo(!inverted.equals("asked"));
        assertThat(meaning.sure() && meaning.inverted()).isEqualTo(inverted.equals("true"));
    }

    /** What stands near a signal's words and is another thing. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Peak Trq",
                "V_Mot",
                "Coolant Temp 1",
                "Cruise Set Speed",
                "Clutch Temp",
                "Brake Temp",
                "Park Brake Temp"
            })
    void a_name_of_something_else_is_not_taken(String name) {
        assertThat(ColumnMeanings.meaning(ColumnMeanings.heading(name)).filter(HeaderTokens.Meaning::sure))
                .as(name)
                .isNotPresent();
    }
}
