package witnessmark.triplog.read;

import witnessmark.triplog.signal.Signal;

/** What was read, counted while reading; the package's own working tally. */
final class ReadCounts {
    long lines;
    long rows;
    /** Frames a little older than the one before them (two interfaces in one file); taken as simultaneous. */
    long reordered;

    final long[] valid = new long[Signal.count()];
    final long[] notAvailable = new long[Signal.count()];
    final long[] error = new long[Signal.count()];
}
