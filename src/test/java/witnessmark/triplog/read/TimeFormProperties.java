package witnessmark.triplog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;

/** Written times against what java.time makes of the same text, row after row as in a log. */
class TimeFormProperties {
    private static long read(TimeForm form, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return form.read(bytes, 0, bytes.length);
    }

    private static long micros(Instant instant) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, instant);
    }

    private static List<Instant> moments(long startMillis, List<Integer> stepsMillis) {
        List<Instant> moments = new ArrayList<>();
        Instant now = Instant.ofEpochMilli(startMillis);
        for (int step : stepsMillis) {
            now = now.plusMillis(step);
            moments.add(now);
        }
        return moments;
    }

    @Property(tries = 300)
    void local_times_in_a_zone_with_summer_time_agree_row_by_row(
            @ForAll @LongRange(min = 946_684_800_000L, max = 1_900_000_000_000L) long start,
            @ForAll @Size(min = 1, max = 60) List<@IntRange(min = -90_000, max = 90_000) Integer> steps) {
        ZoneId zone = ZoneId.of("America/Chicago");
        TimeForm form = TimeForm.of("yyyy-MM-dd HH:mm:ss", zone).orElseThrow();
        DateTimeFormatter written = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss.SSS", Locale.ROOT);

        for (Instant moment : moments(start, steps)) {
            String text = written.format(moment.atZone(zone));
            long library =
                    micros(LocalDateTime.parse(text, written).atZone(zone).toInstant());
            assertThat(read(form, text)).as(text).isEqualTo(library);
        }
    }

    @Property(tries = 300)
    void times_with_their_own_offset_agree_though_it_changes_from_row_to_row(
            @ForAll @LongRange(min = 0, max = 1_900_000_000_000L) long start,
            @ForAll @Size(min = 1, max = 60) List<@IntRange(min = 0, max = 70_000) Integer> steps,
            @ForAll @Size(min = 1, max = 4) List<@IntRange(min = -11, max = 11) Integer> offsets) {
        TimeForm form =
                TimeForm.of("yyyy-MM-dd'T'HH:mm:ss.SSSX", ZoneOffset.UTC).orElseThrow();
        int row = 0;

        for (Instant moment : moments(start, steps)) {
            OffsetDateTime at = moment.atOffset(ZoneOffset.ofHours(offsets.get(row++ % offsets.size())));
            String text = DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(at);
            assertThat(read(form, text))
                    .as(text)
                    .isEqualTo(micros(OffsetDateTime.parse(text).toInstant()));
        }
    }

    @Example
    void a_fraction_may_be_in_the_pattern_or_not() {
        long expected = micros(Instant.parse("2024-02-29T23:59:58.250Z"));
        for (String pattern : List.of("yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd HH:mm:ss.SSS", "yyyy-MM-dd HH:mm:ss,SS")) {
            TimeForm form = TimeForm.of(pattern, ZoneOffset.UTC).orElseThrow();
            assertThat(read(form, "2024-02-29 23:59:58.250")).isEqualTo(expected);
        }
    }

    @Example
    void what_is_no_time_is_bad_also_right_after_a_good_one() {
        TimeForm form = TimeForm.of("yyyy-MM-dd HH:mm:ss", ZoneOffset.UTC).orElseThrow();
        assertThat(TimeForm.isBad(read(form, "2024-05-01 10:20:30"))).isFalse();
        for (String bad : List.of(
                "2024-05-01 10:20:61",
                "2024-05-01 10:20:3x",
                "2024-05-01 10:20:",
                "2024-05-01 10:20:30 PM",
                "2024-05-32 10:20:30",
                "")) {
            assertThat(TimeForm.isBad(read(form, bad))).as(bad).isTrue();
        }
    }
}
