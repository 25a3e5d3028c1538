package witnessmark.document;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import witnessmark.gearbox.EnumWord;

/** How a truck is moved; each way has its own reminders besides those of every tow. */
public enum TowWay {
    /** On a trailer, nothing turning. */
    HAULED(List.of("tow-trailer-best")),
    /** All drive axles lifted. */
    LIFTED(List.of("tow-clutch-no-help", "tow-lift-all", "tow-spring-brakes")),
    /** Drive axles on the ground, their shafts pulled. */
    SHAFTS(List.of("tow-clutch-no-help", "tow-pull-shafts", "tow-spring-brakes", "tow-hub-oil")),
    /** Drive axles on the ground, the driveline taken off. */
    DRIVELINE(List.of("tow-clutch-no-help", "tow-disconnect-driveline", "tow-spring-brakes", "tow-refit-marked")),
    /** The gearbox alone, out of its truck. */
    LOOSE(List.of(
            "loose-secure-first", "loose-record", "loose-lift", "transport-block", "loose-strap", "loose-set-down"));

    /** The words for them, for messages. */
    public static final String WORDS = Arrays.stream(values()).map(EnumWord::of).collect(Collectors.joining(", "));

    private static final List<String> EVERY_TRUCK = List.of(
            "tow-secure-first",
            "tow-law",
            "tow-record",
            "tow-trailer-coupled",
            "tow-no-bump-start",
            "tow-wrong-inspect");

    private final List<String> own;

    TowWay(List<String> own) {
        this.own = own;
    }

    /** The way so named; empty if it is none of them. */
    public static Optional<TowWay> parse(String word) {
        return Arrays.stream(values()).filter(w -> EnumWord.of(w).equals(word)).findFirst();
    }

    /** Whether a reminder of the knowledge base belongs to this way; one that no way names belongs to all. */
    public boolean needs(String reminder) {
        boolean ofSomeWay = Arrays.stream(values()).anyMatch(w -> w.own.contains(reminder));
        return own.contains(reminder) || (EVERY_TRUCK.contains(reminder) ? this != LOOSE : !ofSomeWay);
    }
}
