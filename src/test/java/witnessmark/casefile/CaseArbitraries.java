package witnessmark.casefile;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCases;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.ClaimSet;
import witnessmark.casefile.history.EvidenceSet;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.GearboxSet;
import witnessmark.casefile.history.MeasurementSet;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.TextSet;
import witnessmark.casefile.history.VehicleSet;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.evidence.LogRecord.Tally;
import witnessmark.triplog.summary.RecordedTimes.Odometer;
import witnessmark.triplog.summary.RowMarks;
import witnessmark.triplog.summary.TimeSpan;

/** Cases and changes at random, with texts that are hard to write down. */
public final class CaseArbitraries {
    private CaseArbitraries() {}

    public static Arbitrary<String> texts() {
        Arbitrary<String> anyBmp = Arbitraries.strings()
                .withChars("\"'\\\n\t :#-{}[],&*!|>%@`~01\u00e9\u00a0\u2028\u2029\ufeff\u200b\ufffdaZ")
                .ofMaxLength(30);
        Arbitrary<String> words = Arbitraries.of(
                "null",
                "true",
                "no",
                "~",
                "yes",
                "1e5",
                ".nan",
                "0x10",
                "first line\nsecond line",
                "a\n\n b",
                "x\n",
                "gear \ud83d\ude9a box",
                "- a",
                "a: b",
                "#no comment",
                "key: |",
                "",
                "  lead",
                "trail  ");
        return Arbitraries.oneOf(anyBmp, words, Arbitraries.strings().alpha().ofMaxLength(60));
    }

    public static Arbitrary<String> ids() {
        return Arbitraries.of(
                "range-cone-low-burned",
                "regulator-outlet-low",
                "box-recently-rebuilt",
                "null",
                "true",
                "no",
                "1",
                "0x1",
                "1e5",
                "a",
                "noise-in-low",
                "lever-hops");
    }

    static Arbitrary<String> lines() {
        return texts().map(t -> t.replace('\n', ' '));
    }

    static Arbitrary<OptionalDouble> km() {
        return Arbitraries.doubles().between(0, 2_000_000).optional().map(o -> o.map(OptionalDouble::of)
                .orElse(OptionalDouble.empty()));
    }

    public static Arbitrary<Vehicle> vehicles() {
        return Combinators.combine(lines(), lines(), texts(), km(), km(), km(), texts())
                .as(Vehicle::new);
    }

    public static Arbitrary<Claim> claims() {
        Arbitrary<Map<ClaimField, String>> facts = Arbitraries.maps(
                        Arbitraries.of(ClaimField.CUSTOMER, ClaimField.COST, ClaimField.LOOKED), lines())
                .ofMaxSize(3);
        Arbitrary<PartLine> parts = Combinators.combine(
                        lines().filter(l -> !l.isBlank()),
                        lines(),
                        Arbitraries.doubles().between(0.1, 99),
                        Arbitraries.of(PartLine.Whereabouts.class).optional(),
                        lines())
                .as(PartLine::new);
        return Combinators.combine(facts, parts.list().ofMaxSize(3)).as(Claim::new);
    }

    public static Arbitrary<Layout> gearboxes() {
        Arbitrary<OptionalInt> ratios = Arbitraries.integers()
                .between(1, 32)
                .optional()
                .map(o -> o.map(OptionalInt::of).orElse(OptionalInt.empty()));
        return Combinators.combine(
                        ratios,
                        Arbitraries.of(Layout.RangeShift.class).optional(),
                        Arbitraries.of(Layout.Splitter.class).optional(),
                        Arbitraries.of(Layout.Countershafts.class).optional(),
                        Arbitraries.of(Layout.Linkage.class).optional(),
                        Arbitraries.of(Layout.Fitted.class).optional(),
                        Arbitraries.of(Layout.Fitted.class).optional(),
                        Arbitraries.of(Layout.Fitted.class).optional())
                .as(Layout::new);
    }

    public static Arbitrary<FindingEntry> findings() {
        return Combinators.combine(
                        ids(),
                        Arbitraries.of(FindingState.class),
                        texts(),
                        Arbitraries.of(Teller.class).optional(),
                        Arbitraries.of("1", "4", "R", "direct", "head").optional())
                .as(FindingEntry::new);
    }

    public static Arbitrary<Measurement> measurements() {
        Arbitrary<Unit> pressure = Arbitraries.of(Unit.BAR, Unit.PSI, Unit.KILOPASCAL);
        Arbitrary<Optional<Limits>> limits = Combinators.combine(
                        Arbitraries.doubles().between(0, 10),
                        Arbitraries.doubles().between(10, 20),
                        Arbitraries.integers().between(0, 2),
                        pressure)
                .as((low, high, sides, unit) -> new Limits(
                        sides == 0 ? OptionalDouble.empty() : OptionalDouble.of(low),
                        sides == 1 ? OptionalDouble.empty() : OptionalDouble.of(high),
                        unit,
                        "service manual of this unit"))
                .optional();
        return Combinators.combine(ids(), Arbitraries.doubles(), pressure, limits, texts())
                .as(Measurement::new);
    }

    /** Counts of logs, dated and undated. */
    private static Arbitrary<LogRecord> records() {
        Arbitrary<Double> amounts =
                Arbitraries.doubles().between(0, 1e6).ofScale(6).edgeCases(EdgeCases.Config::none);
        Arbitrary<TimeSpan> spans = Combinators.combine(
                        Arbitraries.longs().between(0, 4_000_000_000_000_000L),
                        Arbitraries.longs().between(0, 1L << 40))
                .as((from, length) -> new TimeSpan(from, from + length));
        Arbitrary<Tally> tallies = Combinators.combine(
                        Arbitraries.longs().between(0, 1_000_000),
                        amounts,
                        amounts,
                        Arbitraries.longs().between(0, 3))
                .as(Tally::new);
        Arbitrary<Odometer> odometers =
                Combinators.combine(amounts, amounts).as((a, b) -> new Odometer(Math.min(a, b), Math.max(a, b)));
        Arbitrary<String> doubts = lines().map(String::strip).filter(t -> !t.isEmpty());
        return Combinators.combine(
                        spans.list().ofMaxSize(3),
                        odometers.optional(),
                        amounts.list().ofSize(6),
                        Arbitraries.maps(ids(), tallies).ofMaxSize(3),
                        doubts.list().ofMaxSize(2),
                        Arbitraries.strings()
                                .withChars("0123456789abcdef")
                                .ofLength(16)
                                .list()
                                .ofMaxSize(3))
                .as((times, odometer, a, counted, doubted, marks) -> new LogRecord(
                        times,
                        odometer,
                        a.get(0),
                        a.get(1),
                        a.get(2),
                        a.get(3),
                        a.get(4),
                        a.get(5),
                        counted,
                        doubted,
                        new RowMarks(marks)));
    }

    private static Arbitrary<Map<String, Reckoned>> reckoned() {
        Arbitrary<Reckoned> one = Combinators.combine(
                        Arbitraries.doubles(),
                        Arbitraries.of(Unit.class),
                        Arbitraries.doubles(),
                        Arbitraries.of(Unit.class),
                        Arbitraries.of(Reckoned.Outcome.class))
                .as(Reckoned::new);
        return Arbitraries.maps(ids(), one).ofMaxSize(2);
    }

    public static Arbitrary<Evidence> evidence() {
        Arbitrary<Map<String, String>> inputs = Arbitraries.maps(ids(), lines()).ofMaxSize(3);
        Arbitrary<Optional<Evidence.SourceFile>> file = Arbitraries.of("log.csv", "a b:c.csv")
                .map(name -> new Evidence.SourceFile(name, "0123456789abcdef".repeat(4)))
                .optional();
        return Combinators.combine(
                        ids(),
                        Arbitraries.of(Evidence.Kind.class),
                        texts(),
                        texts(),
                        inputs,
                        file,
                        Arbitraries.maps(ids(), Arbitraries.of(FindingState.class))
                                .ofMaxSize(3),
                        Combinators.combine(records().optional(), reckoned()).as(Map::entry))
                .as((id, kind, summary, formula, in, source, states, figures) -> new Evidence(
                        id,
                        kind,
                        summary,
                        formula,
                        in,
                        source,
                        states,
                        Map.of(),
                        kind == Evidence.Kind.LOGGED ? figures.getKey() : Optional.empty(),
                        kind == Evidence.Kind.COMPUTED ? figures.getValue() : Map.of()));
    }

    public static Arbitrary<Change> changes() {
        return Arbitraries.oneOf(
                Combinators.combine(Arbitraries.of(TextField.class), lines()).as((f, t) -> (Change) new TextSet(f, t)),
                vehicles().map(VehicleSet::new),
                gearboxes().map(GearboxSet::new),
                claims().map(ClaimSet::new),
                findings().map(FindingSet::new),
                measurements().map(MeasurementSet::new),
                evidence().map(EvidenceSet::new),
                texts().filter(t -> !t.isBlank()).map(NoteAdded::new));
    }

    public static Arbitrary<CaseFile> cases() {
        Arbitrary<List<Function<CaseSheet, CaseSheet>>> parts = Arbitraries.<Function<CaseSheet, CaseSheet>>oneOf(
                        findings().map(f -> s -> s.finding(f)),
                        claims().map(c -> s -> s.claim(c)),
                        measurements().map(m -> s -> s.measurement(m)),
                        evidence().map(e -> s -> s.evidence(e)),
                        texts().filter(t -> !t.isBlank()).map(n -> s -> s.note(n)),
                        Combinators.combine(Arbitraries.of(TextField.class), texts())
                                .as((field, text) ->
                                        s -> s.text(field, field == TextField.TITLE ? text.replace('\n', ' ') : text)))
                .list()
                .ofMaxSize(12);
        return Combinators.combine(vehicles(), gearboxes(), parts).as((vehicle, gearbox, all) -> {
            CaseSheet sheet =
                    new CaseSheet(new CaseId("case-1")).vehicle(vehicle).gearbox(gearbox);
            all.forEach(part -> part.apply(sheet));
            return sheet.toCaseFile();
        });
    }

    /** A file put with a case, told apart from others by the digit. */
    public static Change attachment(int digit) {
        return new AttachmentAdded(new Attachment(
                "cone " + digit + ".jpg", "image/jpeg", String.valueOf(digit).repeat(64), 12L));
    }
}
