package witnessmark.shell.print;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.Locale;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * Says on a terminal, in one line that it wipes again, that a command is still at work: from two seconds on, until the
 * first word of its answer. Nothing is said where standard error is no terminal. One at a time.
 */
public final class Waiting implements AutoCloseable {
    private static final long PATIENCE_MILLIS = 2_000;
    private static final long AGAIN_MILLIS = 500;
    /** Fits the narrowest window: a line that wraps could not be wiped again. */
    static final int WIDEST = 49;

    private static final AtomicReference<@Nullable Waiting> NOW = new AtomicReference<>();

    private final String what;
    private final PrintStream line;
    private final long begun = System.nanoTime();
    private final @Nullable ScheduledExecutorService clock;
    private volatile String far = "";
    private boolean over;
    private boolean told;

    Waiting(String what, PrintStream line, boolean telling) {
        this(what, line, telling, PATIENCE_MILLIS);
    }

    Waiting(String what, PrintStream line, boolean telling, long patienceMillis) {
        this.what = what;
        this.line = line;
        this.clock = telling
                ? Executors.newSingleThreadScheduledExecutor(task -> {
                    Thread thread = new Thread(task, "waiting");
                    thread.setDaemon(true);
                    return thread;
                })
                : null;
        if (clock != null) {
            clock.scheduleAtFixedRate(this::tell, patienceMillis, AGAIN_MILLIS, TimeUnit.MILLISECONDS);
        }
        NOW.set(this);
    }

    /** @param what the command's name */
    public static Waiting on(String what) {
        return new Waiting(what, System.err, Terminal.showsMessages());
    }

    /** How far the command at work has come; nothing where none is. */
    public static void at(long done, long all) {
        Waiting now = NOW.get();
        if (now != null) {
            now.far = String.format(Locale.ROOT, ", %,d of %,d", done, all);
        }
    }

    /** Leaves the line to somebody else who says how far it is. */
    public static void leave() {
        Waiting now = NOW.get();
        if (now != null) {
            now.close();
        }
    }

    /** The same place, which ends the waiting with the first word written to it. */
    public PrintWriter until(PrintWriter out) {
        return new PrintWriter(new Heard(out));
    }

    private synchronized void tell() {
        if (!over) {
            String said =
                    String.format(Locale.ROOT, "%s: %d s%s", what, (System.nanoTime() - begun) / 1_000_000_000L, far);
            line.print("\r" + (said.length() > WIDEST ? said.substring(0, WIDEST) : said));
            line.flush();
            told = true;
        }
    }

    @Override
    public synchronized void close() {
        if (over) {
            return;
        }
        over = true;
        NOW.compareAndSet(this, null);
        if (clock != null) {
            clock.shutdownNow();
        }
        if (told) {
            line.print("\r" + " ".repeat(WIDEST) + "\r");
            line.flush();
        }
    }

    private final class Heard extends FilterWriter {
        Heard(Writer out) {
            super(out);
        }

        @Override
        public void write(int c) throws IOException {
            close(c != 0);
            super.write(c);
        }

        @Override
        public void write(char[] chars, int from, int length) throws IOException {
            close(length > 0);
            super.write(chars, from, length);
        }

        @Override
        public void write(String text, int from, int length) throws IOException {
            close(length > 0);
            super.write(text, from, length);
        }

        private void close(boolean something) {
            if (something) {
                Waiting.this.close();
            }
        }

        @Override
        public void close() throws IOException {
            flush();
        }
    }
}
