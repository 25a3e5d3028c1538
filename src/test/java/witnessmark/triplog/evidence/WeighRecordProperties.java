package witnessmark.triplog.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import witnessmark.triplog.evidence.LogRecord.Tally;

class WeighRecordProperties {
    @Provide
    Arbitrary<LogRecord> records() {
        Arbitrary<Double> hours = Arbitraries.doubles().between(0, 5000);
        Arbitrary<Tally> tallies = Combinators.combine(
                        Arbitraries.oneOf(
                                Arbitraries.just(0L), Arbitraries.longs().between(0, 10_000)),
                        Arbitraries.doubles().between(0, 1),
                        Arbitraries.oneOf(
                                Arbitraries.just(0.0), Arbitraries.doubles().between(0, 100_000)),
                        Arbitraries.oneOf(
                                Arbitraries.just(0L), Arbitraries.longs().between(1, 20)))
                .as((count, sure, chances, open) ->
                        new Tally(count, LogRecord.rounded(count * sure), LogRecord.rounded(chances), open));
        Arbitrary<Map<String, Tally>> counted = Arbitraries.maps(
                        Arbitraries.of(LogFindings.shipped().rows().stream()
                                .map(LogFinding::id)
                                .toList()),
                        tallies)
                .ofMaxSize(6);
        return Combinators.combine(hours, hours, counted)
                .as((telling, km, map) -> new LogRecord(
                        List.of(),
                        Optional.empty(),
                        LogRecord.rounded(km),
                        LogRecord.rounded(2 * telling),
                        LogRecord.rounded(1.5 * telling),
                        LogRecord.rounded(telling),
                        LogRecord.rounded(telling / 2),
                        LogRecord.rounded(km / 10),
                        new LinkedHashMap<>(map),
                        List.of()));
    }

    @Provide
    Arbitrary<List<LogRecord>> logs() {
        return records().list().ofMinSize(2).ofMaxSize(7);
    }

    @Property(tries = 500)
    void whatever_was_counted_one_witness_has_its_bounds(@ForAll("records") LogRecord record) {
        for (LogEvidence evidence : WeighRecord.weigh(record)) {
            assertThat(evidence.factor()).isBetween(0.05 - 1e-9, 100 + 1e-9);
        }
    }

    @Property(tries = 300)
    void the_order_in_which_logs_are_added_does_not_matter(
            @ForAll("records") LogRecord one, @ForAll("records") LogRecord other) {
        Map<String, Double> forth = factors(one.plus(other));
        Map<String, Double> back = factors(other.plus(one));

        assertThat(forth.keySet()).isEqualTo(back.keySet());
        forth.forEach((finding, factor) -> assertThat(back.get(finding)).isCloseTo(factor, within(1e-6 * factor)));
    }

    /** To the last digit: a limit that falls between two sums of the same logs would part them. */
    @Property(tries = 300)
    void however_logs_are_grouped_and_ordered_they_weigh_the_same(
            @ForAll("logs") List<LogRecord> logs, @ForAll Random random) {
        List<LogRecord> groups = new ArrayList<>(logs);
        while (groups.size() > 1) {
            LogRecord one = groups.remove(random.nextInt(groups.size()));
            int other = random.nextInt(groups.size());
            groups.set(other, groups.get(other).plus(one));
        }

        LogRecord inOrder = logs.stream().reduce(LogRecord::plus).orElseThrow();

        assertThat(WeighRecord.weigh(groups.get(0))).isEqualTo(WeighRecord.weigh(inOrder));
    }

    @Property(tries = 300)
    void a_log_whose_acts_are_all_open_is_held_against_nothing_alone(@ForAll("records") LogRecord record) {
        record.tallies().forEach((finding, tally) -> {
            if (tally.count() == 0 && tally.open() > 0) {
                assertThat(WeighRecord.weigh(only(finding, tally)))
                        .extracting(LogEvidence::finding)
                        .doesNotContain(finding);
            }
        });
    }

    @Property(tries = 300)
    void one_more_event_never_speaks_less_for_a_finding(@ForAll("records") LogRecord record) {
        for (LogFinding finding : LogFindings.shipped().rows()) {
            Tally tally = record.tallies().get(finding.id());
            if (tally != null) {
                LogRecord more = record.plus(only(finding.id(), new Tally(1, 1, 0)));
                assertThat(factors(more).get(finding.id()))
                        .isGreaterThanOrEqualTo(factors(record).getOrDefault(finding.id(), 0.0) - 1e-9);
            }
        }
    }

    private static LogRecord only(String finding, Tally tally) {
        return new LogRecord(List.of(), Optional.empty(), 0, 0, 0, 0, 0, 0, Map.of(finding, tally), List.of());
    }

    private static Map<String, Double> factors(LogRecord record) {
        Map<String, Double> factors = new LinkedHashMap<>();
        WeighRecord.weigh(record).forEach(e -> factors.put(e.finding(), e.factor()));
        return factors;
    }
}
