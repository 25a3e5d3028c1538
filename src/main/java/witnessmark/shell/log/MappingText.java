package witnessmark.shell.log;

import witnessmark.triplog.read.PeekLog;
import witnessmark.triplog.signal.Signal;

/** A mapping as a file to edit, with what may be written into it. */
final class MappingText {
    private static final String EXPLAINED =
            """
            # Which column holds which signal. Put right what is wrong; a line that begins with # does not count.
            #   header-lines: how many lines stand before the first row, notes above the columns' names among them
            #   column: its name in the header, or its number as "#3"
            #   unit: in which it is written (rpm, km/h, mph, %, degC, degF, km, mi, kg, lb)
            #   factor: the number is multiplied by it first; 100 for shares from 0 to 1
            #   inverted: true, for a switch that is written the other way round (0 for pressed, 1 for low range)
            # Switches: 1, on, true, yes, pressed, high; or 0, off, false, no, released, low.
            # lever and current-gear: 0 or N is neutral, below 0 or R reverse, above 0 in gear. A switch that tells only
            # neutral is neutral-switch, one that tells only reverse is reverse-switch; both may be given.
            """;

    private MappingText() {}

    /** The mapping of the log, with the columns that it leaves out as lines that do not count. */
    static String of(PeekLog.Peek peek) {
        StringBuilder text = new StringBuilder(EXPLAINED)
                .append(peek.mapping().orElseThrow().toYaml().strip())
                .append('\n');
        for (String column : peek.unused()) {
            Signal could = peek.couldBe().get(column);
            text.append("#  ")
                    .append(could == null ? "SIGNAL" : could.id())
                    .append(": ")
                    .append(quoted(column))
                    .append(could == null ? "   # not used" : "   # could be it")
                    .append('\n');
        }
        return text.toString();
    }

    private static String quoted(String column) {
        return '"' + column.replaceAll("[\\p{Cntrl}\"\\\\]", " ") + '"';
    }
}
