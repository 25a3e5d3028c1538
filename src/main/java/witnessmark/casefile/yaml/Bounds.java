package witnessmark.casefile.yaml;

/**
 * How large a case file may be.
 *
 * @param bytes of the whole file
 * @param entries findings, measurements, notes or other parts of one list
 * @param historyEntries entries of the history
 * @param depth maps and lists inside each other
 */
public record Bounds(int bytes, int entries, int historyEntries, int depth) {
    /** For a file written by a person. */
    public static final Bounds USUAL = new Bounds(2_000_000, 5_000, 50_000, 12);

    /** The same with another size in bytes. */
    public Bounds withBytes(int other) {
        return new Bounds(other, entries, historyEntries, depth);
    }
}
