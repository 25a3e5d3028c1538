package witnessmark.shell.log;

import java.io.PrintStream;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jline.utils.Signals;
import org.jspecify.annotations.Nullable;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.Waiting;
import witnessmark.triplog.read.Progress;

/**
 * Watches over the reading of long logs: says on a terminal how far it is, and lets Ctrl-C stop it so that what was
 * read so far is kept. A second Ctrl-C ends the program as usual.
 */
final class WatchReading implements Progress, AutoCloseable {
    private static final String INTERRUPT = "INT";
    private static final long LONG_BYTES = 30_000_000;
    private static final long TELL_NANOS = 250_000_000;

    private final PrintStream line;
    private final boolean telling;
    private final long begun = System.nanoTime();
    private final AtomicBoolean stopped = new AtomicBoolean();
    private final @Nullable Object before;
    private long toldAt = begun;
    private boolean told;

    /** @param telling whether somebody sits there to be told */
    WatchReading(PrintStream line, boolean telling) {
        this.line = line;
        this.telling = telling;
        this.before = Signals.register(INTERRUPT, this::stop);
    }

    static WatchReading onTerminal() {
        return new WatchReading(System.err, Terminal.canAsk());
    }

    private void stop() {
        // Given back first: who sees that the reading is stopped may press again at once.
        giveBack();
        stopped.set(true);
    }

    private void giveBack() {
        if (before != null) {
            Signals.unregister(INTERRUPT, before);
        }
    }

    boolean isStopped() {
        return stopped.get();
    }

    @Override
    public boolean goOn(long doneBytes, long totalBytes) {
        long now = System.nanoTime();
        if (telling && totalBytes >= LONG_BYTES && now - toldAt >= TELL_NANOS) {
            toldAt = now;
            told = true;
            Waiting.leave();
            line.print("\r" + words(doneBytes, totalBytes, (now - begun) / 1e9));
            line.flush();
        }
        return !stopped.get();
    }

    /** How far the reading is, in one line of at most 79 characters. */
    static String words(long doneBytes, long totalBytes, double seconds) {
        double perSecond = doneBytes / Math.max(seconds, 0.001);
        double left = perSecond > 0 ? (totalBytes - doneBytes) / perSecond : 0;
        return String.format(
                Locale.ROOT,
                "reading: %3.0f %% of %,.0f MB, %,.0f MB/s, about %.0f s left; Ctrl-C stops  ",
                100.0 * doneBytes / Math.max(1, totalBytes),
                totalBytes / 1e6,
                perSecond / 1e6,
                left);
    }

    @Override
    public void close() {
        if (told) {
            line.print("\r" + " ".repeat(79) + "\r");
            line.flush();
        }
        if (!stopped.get()) {
            giveBack();
        }
    }
}
