package witnessmark.triplog.read;

/** Told from time to time how far the reading is; answers whether to go on. */
@FunctionalInterface
public interface Progress {
    Progress SILENT = (done, total) -> true;

    /**
     * @param doneBytes bytes of the file (as stored) read so far
     * @param totalBytes size of the file
     * @return false to stop; what was read so far is kept and marked as partial
     */
    boolean goOn(long doneBytes, long totalBytes);
}
