package witnessmark.yaml;

/**
 * One thing wrong with an input: where it stands, what is wrong, and what would mend it.
 *
 * @param file name of the input as the user knows it
 * @param line 1-based; 0 where the fault is of the whole file
 * @param column 1-based; 0 where the fault is of the whole file
 */
public record Fault(String file, int line, int column, String what, String mend) {

    /** The fault in one line: {@code causes.yaml:3:12 what; mend}. */
    public String sentence() {
        String place = line == 0 ? file : file + ":" + line + ":" + column;
        return place + " " + what + (mend.isEmpty() ? "" : "; " + mend);
    }
}
