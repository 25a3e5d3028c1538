package witnessmark.triplog.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.triplog.signal.Signal;
import witnessmark.triplog.signal.SignalRow;

class BrokenLogTest {
    private static final String HEADER = "time_s,engine_rpm,speed_kmh\n";

    @TempDir
    private Path folder;

    private record Row(long micros, long line, double rpm, double kmh) {}

    private final List<Row> rows = new ArrayList<>();

    private void keep(SignalRow row) {
        rows.add(new Row(row.timeMicros(), row.line(), row.get(Signal.ENGINE_SPEED), row.get(Signal.ROAD_SPEED)));
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private ReadReport read(Path file) {
        return ReadLog.read(LogHead.of(file), Optional.empty(), true, Progress.SILENT, this::keep);
    }

    @Test
    void good_rows_are_read_to_the_last_digit_with_their_line_numbers() throws IOException {
        ReadReport report = read(file("a.csv", HEADER + "0.10,1500.25,80.5\n0.20,-3,81\r\n0.30,,\"82.25\"\n"));

        assertThat(rows.get(0)).isEqualTo(new Row(100_000, 2, 1500.25, 80.5));
        assertThat(rows.get(1).rpm()).isNaN();
        assertThat(rows.get(2).kmh()).isEqualTo(82.25);
        assertThat(report.broken()).extracting(BrokenLines.Tally::kind).containsExactly(BrokenKind.OUT_OF_RANGE);
        assertThat(report.signals().get(Signal.ENGINE_SPEED)).isEqualTo(new ReadReport.SignalCounts(1, 1, 1));
    }

    @Test
    void a_value_after_an_empty_last_field_counts_though_it_is_the_same_as_before() throws IOException {
        read(file("a.csv", HEADER + "0.10,1500,80\n0.20,1500,\n0.30,1500,80\n0.40,,80\n0.50,1500,80"));

        assertThat(rows).extracting(Row::kmh).containsExactly(80.0, Double.NaN, 80.0, 80.0, 80.0);
        assertThat(rows).extracting(Row::rpm).containsExactly(1500.0, 1500.0, 1500.0, Double.NaN, 1500.0);
    }

    @Test
    void a_line_that_ends_in_the_middle_of_a_field_takes_nothing_from_the_bytes_behind_it() throws IOException {
        StringBuilder text = new StringBuilder(HEADER);
        // More than one buffer of lines, so that old bytes stand behind the end of the last one.
        for (int i = 0; i < 30_000; i++) {
            text.append(String.format(Locale.ROOT, "%.2f,1500.25,80.75%n", 1000 + i * 0.1));
        }

        ReadReport report = read(file("a.csv", text + "5000.00,1500.25,8"));

        assertThat(report.rows()).isEqualTo(30_001);
        assertThat(rows.subList(0, 30_000)).allMatch(row -> row.rpm() == 1500.25 && row.kmh() == 80.75);
        assertThat(rows.get(30_000)).isEqualTo(new Row(5_000_000_000L, 30_002, 1500.25, 8));
    }

    @Test
    void broken_lines_are_counted_by_kind_with_their_first_line_numbers() throws IOException {
        String text = HEADER
                + "0.1,1500,80\n0.2,1500\nx,1500,80\n0.4,15x0,80\n0.5,1500,80\n0.6,1500\n0.7,15\u00010,8\u0002\n";

        ReadReport report = read(file("b.csv", text));

        assertThat(report.broken())
                .containsExactly(
                        new BrokenLines.Tally(BrokenKind.TOO_FEW_COLUMNS, 2, List.of(3L, 7L)),
                        new BrokenLines.Tally(BrokenKind.BAD_TIME, 1, List.of(4L)),
                        new BrokenLines.Tally(BrokenKind.BAD_NUMBER, 3, List.of(5L, 8L, 8L)));
        assertThat(report.broken().get(0).sentence()).isEqualTo("2 x line has too few columns, skipped (lines 3, 7)");
        assertThat(rows).hasSize(4);
    }

    @Test
    void frames_of_the_wider_form_are_counted_and_not_dropped_in_silence() throws IOException {
        ReadReport report = read(
                file(
                        "fd.log",
                        "(1700000000.000000) can0 0CF00400#FF7D870019FFFFFF\n(1700000000.100000) can0 0CF00400##1FF7D870019FFFFFF\n"));

        assertThat(report.broken()).containsExactly(new BrokenLines.Tally(BrokenKind.WIDER_FRAME, 1, List.of(2L)));
    }

    @Test
    void frames_are_read_in_both_forms_and_bad_ones_counted() throws IOException {
        String text =
                """
                (1436509052.249713) can0 0CF00400#FF7D87482BFFFFFF
                (1436509052.349713) can0 18FEF100#F30050C0FFFFFFFF R
                 (1436509052.449713)  can0  0CF00400   [8]  FF 7D 87 48 2B FF FF FF
                (1436509052.549713) can0 2CF00400#FF7D87482BFFFFFF
                (1436509052.649713) can0 0CF00400#FF7D87482BFFFFF
                (1436509052.749713) can0 0CF00400#FF7D87
                (1436509052.849713) can0 123#1122
                garbage
                (1436509052.949713) can0 0CF00400#FFFFFFFFFFFFFFFF
                """;

        ReadReport report = read(file("c.log", text));

        assertThat(report.broken())
                .containsExactly(
                        new BrokenLines.Tally(BrokenKind.NOT_A_FRAME, 1, List.of(8L)),
                        new BrokenLines.Tally(BrokenKind.BAD_IDENTIFIER, 1, List.of(4L)),
                        new BrokenLines.Tally(BrokenKind.BAD_DATA, 1, List.of(5L)),
                        new BrokenLines.Tally(BrokenKind.SHORT_FRAME, 1, List.of(6L)));
        assertThat(rows.get(0)).isEqualTo(new Row(1436509052249713L, 1, 1385.0, Double.NaN));
        assertThat(rows.get(1).kmh()).isEqualTo(80.0);
        assertThat(rows.get(rows.size() - 1).rpm()).as("not available").isNaN();
    }

    @Test
    void a_truncated_gzip_file_gives_its_good_lines_and_says_so() throws IOException {
        StringBuilder text = new StringBuilder(HEADER);
        Random random = new Random(1);
        for (int i = 0; i < 20_000; i++) {
            text.append(i / 10.0)
                    .append(',')
                    .append(1000 + random.nextInt(900))
                    .append(',')
                    .append(60)
                    .append('\n');
        }
        Path whole = folder.resolve("d.csv.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(whole))) {
            out.write(text.toString().getBytes(StandardCharsets.UTF_8));
        }
        byte[] bytes = Files.readAllBytes(whole);
        Files.write(whole, Arrays.copyOf(bytes, bytes.length / 2));

        ReadReport report = read(whole);

        assertThat(rows).hasSizeGreaterThan(1000);
        assertThat(report.broken()).extracting(BrokenLines.Tally::kind).contains(BrokenKind.CUT_OFF);
    }

    @Test
    void a_line_without_end_takes_no_memory_and_the_next_line_is_read() throws IOException {
        Path bomb = folder.resolve("e.csv.gz");
        byte[] block = "7".repeat(1 << 16).getBytes(StandardCharsets.UTF_8);
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(bomb))) {
            out.write((HEADER + "0.1,1500,80\n").getBytes(StandardCharsets.UTF_8));
            for (int i = 0; i < 1600; i++) {
                out.write(block);
            }
            out.write("\n0.2,1510,81\n".getBytes(StandardCharsets.UTF_8));
        }

        ReadReport report = read(bomb);

        assertThat(report.broken()).containsExactly(new BrokenLines.Tally(BrokenKind.LINE_TOO_LONG, 1, List.of(3L)));
        assertThat(rows).hasSize(2);
        assertThat(rows.get(1).line()).isEqualTo(4);
    }

    @Test
    void the_hash_is_that_of_the_text_whether_it_is_packed_or_not() throws Exception {
        Path file = file("f.csv", HEADER + "0.1,1500,80\n");
        Path packed = file.resolveSibling("f.csv.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
            Files.copy(file, out);
        }

        byte[] hash = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
        assertThat(read(file).sha256()).contains(HexFormat.of().formatHex(hash));
        assertThat(read(packed).sha256()).contains(HexFormat.of().formatHex(hash));
    }

    @Test
    void a_stopped_reading_is_marked_as_partial() throws IOException {
        StringBuilder text = new StringBuilder(HEADER);
        for (int i = 0; i < 60_000; i++) {
            text.append(i / 10.0).append(",1500,60\n");
        }
        Path file = file("g.csv", text.toString());

        ReadReport report =
                ReadLog.read(LogHead.of(file), Optional.empty(), true, (done, total) -> done < 300_000, this::keep);

        assertThat(report.partial()).isTrue();
        assertThat(report.sha256()).isEmpty();
        assertThat(rows).isNotEmpty().hasSizeLessThan(60_000);
    }

    /** Source: the Unicode standard's byte order marks; lines ended by carriage returns alone are common practice, no source. */
    @Test
    void text_in_other_forms_comes_to_the_same_rows_as_plain_text() throws IOException {
        StringBuilder text = new StringBuilder("time_s,engine_rpm,speed_kmh,note\n");
        for (int i = 0; i < 9000; i++) {
            text.append(i / 10.0)
                    .append(',')
                    .append(600 + i % 900)
                    .append(".5,")
                    .append(i % 90)
                    .append(",café \uD83D\uDE9A\n");
        }
        String plain = text.toString();
        read(file("plain.csv", plain));
        List<Row> expected = List.copyOf(rows);
        assertThat(expected).hasSize(9000);

        for (Charset charset : List.of(StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
            assertThat(reread(("\uFEFF" + plain).getBytes(charset)))
                    .as(charset.name())
                    .isEqualTo(expected);
        }
        assertThat(reread(plain.replace('\n', '\r').getBytes(StandardCharsets.UTF_8)))
                .isEqualTo(expected);
    }

    private List<Row> reread(byte[] bytes) throws IOException {
        rows.clear();
        ReadReport report = read(Files.write(folder.resolve("other.csv"), bytes));
        assertThat(report.broken()).isEmpty();
        return rows;
    }

    @Nested
    class Refusals {
        @Test
        void a_binary_file_is_refused_with_what_is_expected() throws IOException {
            byte[] bytes = new byte[5000];
            new Random(3).nextBytes(bytes);
            bytes[0] = 'M';
            Path file = Files.write(folder.resolve("h.csv"), bytes);

            assertThatThrownBy(() -> read(file))
                    .isInstanceOf(UnreadableLog.class)
                    .hasMessageContaining("not a text file; a CSV or candump text log is expected");
        }

        @Test
        void an_empty_file_a_missing_file_and_unmarked_utf_16_are_refused_each_with_its_words() throws IOException {
            Path unmarked = Files.write(folder.resolve("i.csv"), HEADER.getBytes(StandardCharsets.UTF_16LE));

            assertThatThrownBy(() -> read(file("j.csv", ""))).hasMessageContaining("the file is empty");
            assertThatThrownBy(() -> read(folder.resolve("k.csv"))).hasMessageContaining("no such file");
            assertThatThrownBy(() -> read(unmarked))
                    .hasMessageContaining("UTF-16 text without the mark that begins it; save it as UTF-8");
        }

        @Test
        void a_packed_file_cut_off_in_its_first_bytes_is_told_so() throws IOException {
            Path file = Files.write(folder.resolve("m.csv.gz"), new byte[] {0x1F, (byte) 0x8B, 8, 0, 0});

            assertThatThrownBy(() -> read(file))
                    .hasMessageContaining("cut off before its first row")
                    .hasMessageNotContaining("null");
        }

        @Test
        void damaged_gzip_is_told_from_text() throws IOException {
            Path file = Files.write(
                    folder.resolve("l.csv.gz"), new byte[] {0x1F, (byte) 0x8B, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9});

            assertThatThrownBy(() -> read(file)).hasMessageContaining("begins like a gzip file but is damaged");
        }

        @Test
        void a_header_that_says_nothing_is_refused_with_its_columns() throws IOException {
            Path file = file("m.csv", "a,b\n1,2\n");

            assertThatThrownBy(() -> read(file))
                    .hasMessageContaining("no column looks like a time")
                    .hasMessageContaining("a, b");
        }
    }
}
