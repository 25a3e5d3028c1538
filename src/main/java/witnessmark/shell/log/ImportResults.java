package witnessmark.shell.log;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.Evidence;
import witnessmark.casefile.Evidence.SourceFile;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.logged.AddLogs;
import witnessmark.casefile.logged.LogsOfCase;
import witnessmark.casefile.store.CaseChangedMeanwhile;
import witnessmark.casefile.store.CaseQuery;
import witnessmark.casefile.store.CaseSummary;
import witnessmark.fleet.TruckDay;
import witnessmark.fleet.TruckDay.SourceLog;
import witnessmark.shell.cases.Cases;
import witnessmark.shell.cases.EnterEvidence;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.triplog.evidence.LogRecord;
import witnessmark.triplog.summary.RowMarks;

/** Takes the records of trucks and days into cases, each as the logs themselves would be added. */
@Component
class ImportResults {
    private static final int PAGE = 1_000;
    private static final int LONGEST_ID = 60;

    private final ObjectProvider<Cases> cases;
    private final EnterEvidence enter;

    ImportResults(ObjectProvider<Cases> cases, EnterEvidence enter) {
        this.cases = cases;
        this.enter = enter;
    }

    /**
     * What to take.
     *
     * @param caseId one case; empty for each open case whose unit bears the truck's name
     * @param truck only its records; empty for all
     * @param nevertheless why doubts are overruled; empty where they are not
     * @param reason why a signed-off case changes; empty for open cases
     */
    record Order(Path table, String caseId, String truck, DayRange days, String nevertheless, String reason) {}

    /** What became of a record. */
    enum State {
        STORED,
        HELD_ALREADY,
        PASSED_OVER,
        REFUSED
    }

    /** One record and one case; {@code said} is empty where it was stored. */
    record Taken(String caseId, TruckDay day, State state, String said) {
        String sentence() {
            return "case " + caseId + ", " + day.truck() + " " + day.day() + ": " + said.replace("\n", "; ");
        }

        Form form() {
            return new Form(
                    caseId, day.truck(), day.day(), state, Optional.of(said).filter(why -> !why.isEmpty()));
        }
    }

    /** What became of a record, for a program. */
    record Form(@Json.Name("case") String id, String truck, String day, State state, Optional<String> why) {}

    /** The same of all records. */
    record AllForms(List<Form> records) {
        static AllForms of(List<Taken> taken) {
            return new AllForms(taken.stream().map(Taken::form).toList());
        }
    }

    /** What became of each record that belongs to a case, case by case; one that is refused stops no other. */
    List<Taken> run(Order order) {
        ReadDaysTable table = ReadDaysTable.from(order.table());
        Map<String, List<String>> casesOf = order.caseId().isEmpty() ? openCases() : Map.of();
        List<Taken> taken = new ArrayList<>();
        for (TruckDay day : table.days()) {
            boolean wanted = order.truck().isEmpty() || order.truck().equals(day.truck());
            if (wanted && order.days().holds(day.day())) {
                List<String> into = order.caseId().isEmpty()
                        ? casesOf.getOrDefault(plain(day.truck()), List.of())
                        : List.of(order.caseId());
                into.forEach(id -> taken.add(take(order, table.sha256(), day, id)));
            }
        }
        if (taken.isEmpty()) {
            throw new Refused("no record of '" + order.table() + "' belongs to "
                    + (order.caseId().isEmpty()
                            ? "an open case: a case's unit must bear the truck's name (case truck CASE --unit NAME), or"
                                    + " name both with --case and --truck"
                            : "truck '" + order.truck() + "' and the days asked for"));
        }
        return taken;
    }

    /** The ids of the open cases by the plain name of their unit. */
    private Map<String, List<String>> openCases() {
        Map<String, List<String>> byUnit = new HashMap<>();
        CaseQuery open = CaseQuery.all().openOnly().withPage(PAGE, 0);
        List<CaseSummary> page = cases.getObject().store().list(open);
        while (!page.isEmpty()) {
            page.stream().filter(c -> !plain(c.unit()).isEmpty()).forEach(c -> byUnit.computeIfAbsent(
                            plain(c.unit()), u -> new ArrayList<>())
                    .add(c.id().toString()));
            page = cases.getObject()
                    .store()
                    .list(open.after(page.get(page.size() - 1).id()));
        }
        return byUnit;
    }

    /** Unit 31, unit-31 and UNIT_31 are one name. */
    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
    }

    private Taken take(Order order, String table, TruckDay day, String id) {
        try {
            CaseHistory history =
                    cases.getObject().alarm(cases.getObject().store().read(new CaseId(id)));
            Optional<Taken> open = isOpen(history, day, order);
            return open.isPresent() ? open.get() : store(order, table, day, history);
        } catch (Refused | CaseRefused | CaseChangedMeanwhile e) {
            return new Taken(id, day, State.REFUSED, e.getMessage());
        }
    }

    /** Empty where the record is to be stored. */
    private Optional<Taken> isOpen(CaseHistory history, TruckDay day, Order order) {
        List<String> hashes = day.logs().stream().map(SourceLog::sha256).toList();
        List<String> held = history.present().evidence().values().stream()
                .flatMap(e -> LogsOfCase.hashes(e).stream())
                .toList();
        String id = history.id().toString();
        if (held.containsAll(hashes)) {
            return Optional.of(new Taken(id, day, State.HELD_ALREADY, "the case holds these logs already"));
        }
        LocalDate until = AddLogs.opened(history).atZone(ZoneOffset.UTC).toLocalDate();
        boolean later = !day.day().equals(TruckDay.UNDATED)
                && LocalDate.parse(day.day()).isAfter(until);
        return later && order.nevertheless().isEmpty()
                ? Optional.of(new Taken(
                        id, day, State.PASSED_OVER, "it is of the time after " + until + ", when the case was opened"))
                : Optional.empty();
    }

    private Taken store(Order order, String table, TruckDay day, CaseHistory history) {
        enter.enter(
                history,
                seen -> {
                    refuseShrunk(seen, evidenceId(day), day);
                    return new AddLogs(seen, offer(day, table), Instant.now()).evidence(order.nevertheless());
                },
                order.reason());
        return new Taken(history.id().toString(), day, State.STORED, "");
    }

    private static AddLogs.Offer offer(TruckDay day, String table) {
        return new AddLogs.Offer(
                evidenceId(day),
                day.profile(),
                day.gearbox(),
                List.of(day.truck()),
                inputs(day, table),
                day.logs().stream()
                        .map(l -> new SourceFile(l.name(), l.sha256()))
                        .toList(),
                driving(day),
                day.record(),
                List.of(),
                day.remarks());
    }

    private static String evidenceId(TruckDay day) {
        String truck = plain(day.truck()).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        int room = LONGEST_ID - "log--".length() - day.day().length();
        String shown = truck.length() > room ? truck.substring(0, room).replaceAll("-+$", "") : truck;
        return (shown.isEmpty() ? "log-" : "log-" + shown + "-") + day.day();
    }

    /** A fuller record of the day takes the place of the one that was taken before; one with less does not. */
    private static void refuseShrunk(CaseHistory history, String name, TruckDay day) {
        Evidence before = history.present().evidence().get(name);
        List<String> hashes = day.logs().stream().map(SourceLog::sha256).toList();
        if (before != null && !hashes.containsAll(LogsOfCase.hashes(before))) {
            throw new Refused(
                    "evidence " + name + " of the case rests on logs that this record lacks",
                    "take it off first" + " if the record is right");
        }
    }

    /** The times are known of the day as a whole, the hashes of each log. */
    private static List<LogsOfCase.Log> driving(TruckDay day) {
        return Stream.concat(
                        Stream.of(new LogsOfCase.Log(
                                day.truck() + " " + day.day(),
                                "",
                                day.record().spans(),
                                day.record().marks())),
                        day.logs().stream()
                                .map(l -> new LogsOfCase.Log(l.name(), l.sha256(), List.of(), RowMarks.NONE)))
                .toList();
    }

    private static Map<String, String> inputs(TruckDay day, String table) {
        LogRecord record = day.record();
        Map<String, String> inputs = new LinkedHashMap<>();
        inputs.put("truck", day.profile());
        inputs.put("day", day.day());
        inputs.put("distance", String.format(Locale.ROOT, "%.1f km", record.km()));
        inputs.put("covered-time", String.format(Locale.ROOT, "%.2f h", record.coveredHours()));
        inputs.put("gear-known", String.format(Locale.ROOT, "%.0f %% of the telling time", 100 * record.gearShare()));
        inputs.put("fleet-table", table);
        return inputs;
    }

    static void print(Page page, List<Taken> all) {
        for (State state : State.values()) {
            List<Taken> some = all.stream().filter(t -> t.state() == state).toList();
            if (!some.isEmpty()) {
                page.heading(heading(state));
                some.forEach(t -> page.item(
                        state == State.STORED
                                ? "case " + t.caseId() + ", " + t.day().truck() + " "
                                        + t.day().day() + ": evidence " + evidenceId(t.day())
                                : t.sentence()));
            }
        }
        if (all.stream().anyMatch(t -> t.state() == State.STORED)) {
            page.blank();
            page.line(LogText.NAMES_A_TRUCK);
            page.line("They weigh in: diagnose CASE");
        }
        page.flush();
    }

    private static String heading(State state) {
        return switch (state) {
            case STORED -> "Stored";
            case HELD_ALREADY -> "Held already";
            case PASSED_OVER -> "Passed over";
            case REFUSED -> "Refused";
        };
    }
}
