package witnessmark.fleet.spark;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import witnessmark.fleet.FleetFile;

/**
 * One file to read.
 *
 * @param mark of the terms it is read under
 * @param likely hashes of kept contents of the same size: it may be one of them under another name
 */
record ReadTask(FleetFile file, String mark, List<String> likely) implements Serializable {
    private static final long BIN_BYTES = 128L << 20;
    private static final int BIN_FILES = 500;
    private static final int BINS_PER_CORE = 4;
    /** What opening a file costs, in bytes read meanwhile. */
    private static final long FILE_BYTES = 1 << 20;

    private record Bin(List<ReadTask> tasks, long[] bytes) {}

    private long cost() {
        return file.bytes() + FILE_BYTES;
    }

    /**
     * Spreads the tasks by bytes, whatever truck they are of: the largest first and each into the emptiest bin, so that
     * neither a large file nor a truck with many holds up the rest.
     */
    static List<List<ReadTask>> spread(List<ReadTask> tasks, int cores) {
        long bytes = tasks.stream().mapToLong(ReadTask::cost).sum();
        long bins = Math.max(Math.max((long) cores * BINS_PER_CORE, bytes / BIN_BYTES), tasks.size() / BIN_FILES);
        PriorityQueue<Bin> emptiest = new PriorityQueue<>(Comparator.comparingLong(b -> b.bytes[0]));
        for (int i = 0; i < Math.min(bins, tasks.size()); i++) {
            emptiest.add(new Bin(new ArrayList<>(), new long[1]));
        }
        tasks.stream()
                .sorted(Comparator.comparingLong(ReadTask::cost).reversed().thenComparing(t -> t.file.path()))
                .forEach(task -> {
                    Bin bin = emptiest.remove();
                    bin.tasks.add(task);
                    bin.bytes[0] += task.cost();
                    emptiest.add(bin);
                });
        return emptiest.stream()
                .sorted(Comparator.comparingLong((Bin b) -> b.bytes[0]).reversed())
                .map(Bin::tasks)
                .toList();
    }
}
