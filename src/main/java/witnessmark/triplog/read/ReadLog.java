package witnessmark.triplog.read;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import witnessmark.triplog.signal.RowSink;
import witnessmark.triplog.signal.Signal;

/** Reads one log file from end to end as rows, in memory that does not grow with the file. */
public final class ReadLog {
    private final LogHead head;
    private final Progress progress;
    private final Optional<MessageDigest> digest;
    private final BrokenLines broken = new BrokenLines();
    private final ReadCounts counts = new ReadCounts();
    private boolean mayTurn = true;
    private boolean newestFirst;

    private ReadLog(LogHead head, Progress progress, boolean hash) {
        this.head = head;
        this.progress = progress;
        this.digest = hash ? Optional.of(sha256()) : Optional.empty();
    }

    /** The same without the file's SHA-256. */
    public static ReadReport read(LogHead head, Optional<ColumnMapping> mapping, Progress progress, RowSink sink) {
        return read(head, mapping, false, progress, sink);
    }

    /**
     * @param head of the file, as found by {@link LogHead#of}
     * @param mapping of the columns; without one, a CSV log is read by the guessed mapping
     * @param hash whether to take the file's SHA-256 on the way
     * @throws UnreadableLog if the mapping does not fit the header, or the file cannot be read
     */
    public static ReadReport read(
            LogHead head, Optional<ColumnMapping> mapping, boolean hash, Progress progress, RowSink sink) {
        return new ReadLog(head, progress, hash).read(mapping, sink);
    }

    /** The same in the order in which the rows stand, though the newest came first: for a look at the beginning. */
    static ReadReport asWritten(LogHead head, Optional<ColumnMapping> mapping, Progress progress, RowSink sink) {
        ReadLog log = new ReadLog(head, progress, false);
        log.mayTurn = false;
        return log.read(mapping, sink);
    }

    private ReadReport read(Optional<ColumnMapping> mapping, RowSink sink) {
        Optional<CsvPlan> plan = head.format() == LogFormat.CSV
                ? Optional.of(head.plan(mapping.orElseGet(() -> head.guess().mapping())))
                : Optional.empty();
        try (Counted file = new Counted(head.bytes().open())) {
            // Hashed unpacked, so that a log is known again whether it is packed or not.
            InputStream unpacked = head.compressed() ? new GZIPInputStream(file, 64 * 1024) : file;
            InputStream text = head.form()
                    .plain(digest.<InputStream>map(d -> new DigestInputStream(unpacked, d))
                            .orElse(unpacked));
            newestFirst = plan.isPresent() && NewestFirst.is(head, plan.get());
            if (newestFirst && mayTurn) {
                return readTurned(text, plan.get(), sink);
            }
            ByteLines lines = new ByteLines(text, broken, () -> progress.goOn(file.done, head.size()));
            if (plan.isPresent()) {
                new CsvReader(lines, broken, counts, sink, plan.get()).readAll();
            } else {
                new CandumpReader(lines, broken, counts, sink).readAll();
            }
            return report(lines.stopped());
        } catch (IOException e) {
            throw new UnreadableLog(
                    head.file() + ": reading failed (" + WhyUnreadable.of(e) + ")", "copy it anew and read it again");
        }
    }

    private ReadReport readTurned(InputStream text, CsvPlan plan, RowSink sink) throws IOException {
        try (TurnedRound turned = new TurnedRound(text, plan.mapping.headerLines())) {
            if (turned.isCutOff()) {
                broken.add(BrokenKind.CUT_OFF, turned.lines());
            }
            ByteLines lines = new ByteLines(turned, broken, () -> progress.goOn(head.size(), head.size()));
            new CsvReader(lines, broken, counts, sink, plan).readAllTurned(turned.lines());
            return report(lines.stopped());
        }
    }

    private ReadReport report(boolean stopped) {
        Map<Signal, ReadReport.SignalCounts> signals = new EnumMap<>(Signal.class);
        for (Signal signal : Signal.values()) {
            int i = signal.ordinal();
            if (counts.valid[i] + counts.notAvailable[i] + counts.error[i] > 0) {
                signals.put(
                        signal, new ReadReport.SignalCounts(counts.valid[i], counts.notAvailable[i], counts.error[i]));
            }
        }
        Optional<String> hash =
                stopped ? Optional.empty() : digest.map(d -> HexFormat.of().formatHex(d.digest()));
        return new ReadReport(
                head.file(),
                head.format(),
                head.size(),
                hash,
                counts.lines,
                counts.rows,
                counts.reordered,
                broken.tallies(),
                signals,
                newestFirst,
                stopped);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }

    /** Counts the bytes of the file as stored. */
    private static final class Counted extends FilterInputStream {
        private long done;

        Counted(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 255;
        }

        @Override
        public int read(byte[] bytes, int from, int length) throws IOException {
            int read = in.read(bytes, from, length);
            if (read > 0) {
                done += read;
            }
            return read;
        }
    }
}
