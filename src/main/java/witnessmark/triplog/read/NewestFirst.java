package witnessmark.triplog.read;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import witnessmark.triplog.signal.RowSink;
import witnessmark.triplog.signal.SignalRow;

/** Tells from the first rows of a CSV log whether its newest row comes first. */
final class NewestFirst implements RowSink {
    private static final int ENOUGH = 10;
    /** So many falls of the time to one rise; the clock of a log that goes on is set back now and then. */
    private static final int MOSTLY = 9;

    private long last;
    private boolean begun;
    private long falls;
    private long rises;

    private NewestFirst() {}

    static boolean is(LogHead head, CsvPlan plan) {
        NewestFirst order = new NewestFirst();
        BrokenLines broken = new BrokenLines();
        InputStream text = new ByteArrayInputStream(head.text().getBytes(StandardCharsets.UTF_8));
        try (ByteLines lines = new ByteLines(text, broken, () -> true)) {
            new CsvReader(lines, broken, new ReadCounts(), order, plan).readAll();
        } catch (IOException e) {
            throw new UncheckedIOException("bytes in memory are always read", e);
        }
        return order.falls >= ENOUGH && order.falls > MOSTLY * order.rises;
    }

    @Override
    public void row(SignalRow row) {
        falls += begun && row.timeMicros() < last ? 1 : 0;
        rises += begun && row.timeMicros() > last ? 1 : 0;
        begun = true;
        last = row.timeMicros();
    }
}
