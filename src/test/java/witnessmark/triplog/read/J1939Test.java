package witnessmark.triplog.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * Against tables that were worked out apart from this program: layouts cross-checked in five public J1939 decoders,
 * 30 frames decoded once by shifts in Python and once by bit strings in R.
 */
class J1939Test {
    private static List<String[]> table(String name) throws IOException {
        List<String[]> rows = new ArrayList<>();
        try (InputStream in = J1939Test.class.getResourceAsStream("/j1939/" + name)) {
            new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .forEach(line -> rows.add(line.split(",", -1)));
        }
        return rows;
    }

    private static J1939Field field(String spn) {
        return List.of(J1939Field.values()).stream()
                .filter(f -> f.spn() == Integer.parseInt(spn))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no field for SPN " + spn));
    }

    private static long data(String hex) {
        long data = 0;
        for (int i = 0; i < hex.length() / 2; i++) {
            data |= Long.parseLong(hex.substring(2 * i, 2 * i + 2), 16) << (8 * i);
        }
        return data;
    }

    @Test
    void every_identifier_of_the_table_comes_apart_as_published() throws IOException {
        List<String[]> rows = table("j1939-ids.csv");

        assertThat(rows).hasSize(24);
        for (String[] row : rows) {
            J1939Id id = J1939Id.of(Long.parseLong(row[0], 16));
            assertThat(List.of(
                            id.priority(),
                            id.extendedDataPage(),
                            id.dataPage(),
                            id.format(),
                            id.specific(),
                            id.source(),
                            id.pgn()))
                    .as(row[0])
                    .isEqualTo(List.of(
                            Integer.parseInt(row[1]),
                            Integer.parseInt(row[2]),
                            Integer.parseInt(row[3]),
                            Integer.parseInt(row[4]),
                            Integer.parseInt(row[5]),
                            Integer.parseInt(row[6]),
                            Integer.parseInt(row[7])));
            assertThat(J1939Id.pgnOf((int) Long.parseLong(row[0], 16))).isEqualTo(id.pgn());
            String destination = id.destination().isPresent()
                    ? String.valueOf(id.destination().getAsInt())
                    : "";
            assertThat(destination).as(row[0]).isEqualTo(row[9]);
        }
    }

    @Test
    void every_field_of_the_layout_table_is_known() throws IOException {
        Set<Integer> known = new HashSet<>();
        List.of(J1939Field.values()).forEach(f -> known.add(f.spn()));

        for (String[] row : table("j1939-signals.csv")) {
            assertThat(known).contains(Integer.parseInt(row[3]));
            J1939Field field = field(row[3]);
            assertThat(field.pgn()).isEqualTo(Integer.parseInt(row[0]));
            assertThat(field.lengthBits()).isEqualTo(Integer.parseInt(row[8]));
            assertThat(field.raw(1L << Integer.parseInt(row[7]))).as(row[4]).isEqualTo(1);
            assertThat(field.value(2) - field.value(1)).as(row[4]).isEqualTo(Double.parseDouble(row[9]), within(1e-12));
            assertThat(field.value(0)).as(row[4]).isEqualTo(Double.parseDouble(row[10]));
        }
    }

    @Test
    void every_field_of_the_frame_table_decodes_as_the_independent_decoders_say() throws IOException {
        List<String[]> rows = table("j1939-frames.csv");

        assertThat(rows).hasSize(111);
        for (String[] row : rows) {
            J1939Field.Reading reading = field(row[4]).read(data(row[2]), row[2].length() / 2);
            String where = row[0] + " " + row[5];
            assertThat(reading.raw()).as(where).isEqualTo(Long.parseLong(row[6]));
            assertThat(reading.status().name()).as(where).isEqualTo(row[7]);
            if (!row[8].isEmpty()) {
                assertThat(reading.value()).as(where).isEqualTo(Double.parseDouble(row[8]), within(1e-9));
            } else {
                assertThat(reading.value()).as(where).isNaN();
            }
        }
    }

    @Test
    void a_frame_of_a_public_decoder_test_gives_its_engine_speed() {
        // voltage-j1939 (ae73c4a), src/decoder.rs tests: 0CF00400 # 000000204E000000 is 2500.0 r/min
        J1939Field.Reading reading = J1939Field.ENGINE_SPEED.read(data("000000204E000000"), 8);

        assertThat(reading.value()).isEqualTo(2500.0);
    }

    @Nested
    class Refusals {
        @Test
        void an_identifier_above_29_bits_is_refused_with_its_value() {
            assertThatThrownBy(() -> J1939Id.of(0x2000_0000L))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("CAN identifier 20000000 is above 1FFFFFFF");
        }

        @Test
        void a_frame_shorter_than_its_field_is_refused() {
            assertThatThrownBy(() -> J1939Field.ENGINE_SPEED.read(0, 4))
                    .hasMessage("engine speed: frame of 4 bytes is too short, 5 are needed");
        }
    }
}
