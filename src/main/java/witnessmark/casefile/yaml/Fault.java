package witnessmark.casefile.yaml;

/**
 * One thing wrong in a case file.
 *
 * @param file the file's name as it was given
 * @param line from 1
 * @param column from 1
 * @param what what was found there
 * @param mend what to do about it
 */
public record Fault(String file, int line, int column, String what, String mend) {
    /** One line: where, what, mend. */
    @Override
    public String toString() {
        return file + ":" + line + ":" + column + " " + what + "; " + mend;
    }
}
