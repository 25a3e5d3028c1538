package witnessmark.triplog.read;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.triplog.signal.Signal;

/**
 * How the reading of one file went.
 *
 * @param file the file
 * @param format its form
 * @param bytes its size as stored
 * @param sha256 its hash, if it was asked for and the file was read to the end
 * @param lines good lines
 * @param rows rows made of them
 * @param reordered frames a little older than the frame before them, taken as simultaneous
 * @param broken broken lines by kind
 * @param signals for each signal that appeared: how many values were valid, not available, in error
 * @param newestFirst whether the newest row stands first in the file, which was read from its end
 * @param partial whether the reading was stopped before the end
 */
public record ReadReport(
        Path file,
        LogFormat format,
        long bytes,
        Optional<String> sha256,
        long lines,
        long rows,
        long reordered,
        List<BrokenLines.Tally> broken,
        Map<Signal, SignalCounts> signals,
        boolean newestFirst,
        boolean partial) {

    /** Values of one signal. */
    public record SignalCounts(long valid, long notAvailable, long error) {
        public SignalCounts plus(SignalCounts other) {
            return new SignalCounts(valid + other.valid, notAvailable + other.notAvailable, error + other.error);
        }
    }

    public long brokenLines() {
        return broken.stream().mapToLong(BrokenLines.Tally::count).sum();
    }
}
