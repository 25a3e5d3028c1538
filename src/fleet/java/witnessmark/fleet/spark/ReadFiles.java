package witnessmark.fleet.spark;

import java.io.IOException;
import java.io.OutputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;
import org.apache.spark.api.java.function.FlatMapFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.jspecify.annotations.Nullable;
import witnessmark.fleet.FleetAct;
import witnessmark.fleet.FleetFile;
import witnessmark.fleet.FleetLog;
import witnessmark.fleet.FleetTerms;
import witnessmark.fleet.ReadFleetLog;
import witnessmark.fleet.ReadOutcome;
import witnessmark.fleet.TruckDayRow;
import witnessmark.fleet.UncountedLog;
import witnessmark.triplog.read.LogBytes;
import witnessmark.triplog.read.LogHead;
import witnessmark.triplog.read.Progress;

/** Reads the files of one bin after the other, on a worker; only one log is held at a time. */
record ReadFiles(Place logs, Broadcast<FleetTerms> terms) implements FlatMapFunction<Iterator<List<ReadTask>>, Row> {

    @Override
    public Iterator<Row> call(Iterator<List<ReadTask>> bins) {
        ReadFleetLog reader = new ReadFleetLog(terms.value());
        Iterable<List<ReadTask>> each = () -> bins;
        return StreamSupport.stream(each.spliterator(), false)
                .flatMap(List::stream)
                .map(task -> read(reader, task))
                .iterator();
    }

    private Row read(ReadFleetLog reader, ReadTask task) {
        LogBytes bytes = logs.bytes(task.file());
        return known(task, bytes)
                .map(hash -> row(task, hash, null, null, null))
                .orElseGet(() -> row(task, reader.read(task.file(), bytes, Progress.SILENT)));
    }

    /** The hash, if it is one of those that are likely; what keeps it from being taken shows when it is read. */
    private static Optional<String> known(ReadTask task, LogBytes bytes) {
        if (task.likely().isEmpty()) {
            return Optional.empty();
        }
        try (DigestInputStream in = new DigestInputStream(LogHead.unpacked(bytes), sha256())) {
            in.transferTo(OutputStream.nullOutputStream());
            return Optional.of(HexFormat.of().formatHex(in.getMessageDigest().digest()))
                    .filter(task.likely()::contains);
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }

    private static Row row(ReadTask task, ReadOutcome outcome) {
        if (outcome instanceof UncountedLog uncounted) {
            return row(task, null, uncounted.reason(), null, null);
        }
        FleetLog log = (FleetLog) outcome;
        return row(
                task,
                log.sha256(),
                null,
                Rows.texts(TruckDayRow.cells(log.asDay())).toArray(String[]::new),
                log.acts().stream().map(ReadFiles::act).toArray(Row[]::new));
    }

    private static Row act(FleetAct act) {
        List<Object> cells = new ArrayList<>(List.of(act.number()));
        cells.addAll(act.ownCells());
        return Rows.row(Rows.OF_AN_ACT, cells);
    }

    private static Row row(
            ReadTask task,
            @Nullable String sha256,
            @Nullable String reason,
            String @Nullable [] held,
            Row @Nullable [] acts) {
        FleetFile file = task.file();
        return RowFactory.create(
                file.path(), file.bytes(), file.modifiedMillis(), task.mark(), sha256, reason, held, acts);
    }
}
