package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.h2.store.fs.FileBase;
import org.h2.store.fs.FilePath;
import org.h2.store.fs.FilePathWrapper;

/**
 * Records what a store writes and when it asks for it to be put on the disk, by the journal and by the database alike, and
 * lays out what a power cut could have left at any moment: what was synced, and of the rest any part.
 */
final class RecordingDisk extends Disk {
    private static final int PAGE = 4096;

    private static RecordingDisk current = new RecordingDisk(Path.of("nowhere"));

    private final Path root;
    private final List<Step> steps = new ArrayList<>();

    private sealed interface Step {}

    private record Write(Path file, long at, byte[] bytes) implements Step {}

    private record Cut(Path file, long size) implements Step {}

    private record Sync(Path file) implements Step {}

    private record Move(Path from, Path to) implements Step {}

    private record Gone(Path file) implements Step {}

    private record Told(int kept) implements Step {}

    /** A recorder for the store in the folder; one at a time in this process. */
    RecordingDisk(Path root) {
        this.root = root;
    }

    void begin() {
        FilePath.register(new Recorded());
        current = this;
    }

    int steps() {
        return steps.size();
    }

    /** The store has acknowledged so much. */
    void told(int kept) {
        add(new Told(kept));
    }

    private synchronized void add(Step step) {
        steps.add(step);
    }

    @Override
    String scheme() {
        return "recorded:";
    }

    @Override
    FileChannel open(Path file, OpenOption... options) throws IOException {
        return new Channel(file, super.open(file, options));
    }

    @Override
    void move(Path from, Path to) throws IOException {
        super.move(from, to);
        add(new Move(from, to));
    }

    @Override
    void delete(Path file) throws IOException {
        super.delete(file);
        add(new Gone(file));
    }

    @Override
    String run() {
        return "the run before the power cut";
    }

    /** What is on the disk of one file for sure, and what was written since. */
    private static final class OnDisk {
        private byte[] sure = new byte[0];
        private final List<Step> since = new ArrayList<>();

        private void sync() {
            sure = laid(null, 1);
            since.clear();
        }

        /** Of each page written since the last sync, kept or not by chance; all of them with no chance given. */
        private byte[] laid(Random chance, double kept) {
            byte[] image = sure.clone();
            for (Step step : since) {
                if (step instanceof Cut cut && survives(chance, kept)) {
                    image = Arrays.copyOf(image, (int) cut.size);
                } else if (step instanceof Write write) {
                    image = laid(image, write, chance, kept);
                }
            }
            return image;
        }

        private static byte[] laid(byte[] before, Write write, Random chance, double kept) {
            byte[] image = before;
            int end = (int) write.at + write.bytes.length;
            // The length of a file may be on the disk before what it holds.
            if (end > image.length && survives(chance, kept)) {
                image = Arrays.copyOf(image, end);
            }
            for (int from = (int) write.at; from < end; ) {
                int to = Math.min(end, (from / PAGE + 1) * PAGE);
                if (survives(chance, kept)) {
                    image = image.length < to ? Arrays.copyOf(image, to) : image;
                    System.arraycopy(write.bytes, from - (int) write.at, image, from, to - from);
                }
                from = to;
            }
            return image;
        }

        private static boolean survives(Random chance, double kept) {
            return chance == null || chance.nextDouble() < kept;
        }
    }

    /**
     * Lays out in a folder what a power cut after so many steps could leave; returns how much had been acknowledged.
     *
     * @param kept the share of pages written but not synced that survive; 1 is a kill instead of a power cut
     */
    int layOut(int cut, double kept, Random chance, Path target) throws IOException {
        Map<Path, OnDisk> files = new TreeMap<>();
        int told = 0;
        for (Step step : steps.subList(0, cut)) {
            if (step instanceof Told acknowledged) {
                told = acknowledged.kept;
            } else if (step instanceof Sync sync) {
                file(files, sync.file).sync();
            } else if (step instanceof Write write) {
                file(files, write.file).since.add(write);
            } else if (step instanceof Cut shorter) {
                file(files, shorter.file).since.add(shorter);
            } else if (step instanceof Gone gone) {
                files.remove(gone.file);
            } else if (step instanceof Move move) {
                rename(files, move);
            }
        }
        for (Map.Entry<Path, OnDisk> file : files.entrySet()) {
            Path to = target.resolve(root.relativize(file.getKey()).toString());
            Files.createDirectories(to.getParent());
            Files.write(to, file.getValue().laid(chance, kept));
        }
        return told;
    }

    private static OnDisk file(Map<Path, OnDisk> files, Path file) {
        return files.computeIfAbsent(file, f -> new OnDisk());
    }

    private static void rename(Map<Path, OnDisk> files, Move move) {
        for (Path file : List.copyOf(files.keySet())) {
            if (file.startsWith(move.from)) {
                Path rest = move.from.relativize(file);
                files.put(rest.toString().isEmpty() ? move.to : move.to.resolve(rest), files.remove(file));
            }
        }
    }

    /** The database's files under the recorder's address. */
    public static final class Recorded extends FilePathWrapper {
        @Override
        public String getScheme() {
            return "recorded";
        }

        @Override
        public FileChannel open(String mode) throws IOException {
            return current.new Channel(Path.of(getBase().toString()), getBase().open(mode));
        }
    }

    /** Passes all on to the file itself, and notes it. */
    private final class Channel extends FileBase {
        private final Path file;
        private final FileChannel to;
        private final boolean noted;

        Channel(Path file, FileChannel to) {
            this.file = file;
            this.to = to;
            // The lock of a running shell is not there any more when the power comes back and it is taken away.
            this.noted = !file.toString().endsWith(".lock.db");
        }

        private void note(Step step) {
            if (noted) {
                add(step);
            }
        }

        @Override
        public int write(ByteBuffer source, long at) throws IOException {
            byte[] bytes = new byte[source.remaining()];
            source.duplicate().get(bytes);
            note(new Write(file, at, bytes));
            return to.write(source, at);
        }

        @Override
        public int write(ByteBuffer source) throws IOException {
            long at = to.position();
            int written = write(source, at);
            to.position(at + written);
            return written;
        }

        @Override
        public FileChannel truncate(long size) throws IOException {
            note(new Cut(file, size));
            to.truncate(size);
            return this;
        }

        @Override
        public void force(boolean metaData) throws IOException {
            to.force(metaData);
            note(new Sync(file));
        }

        @Override
        public int read(ByteBuffer target, long at) throws IOException {
            return to.read(target, at);
        }

        @Override
        public int read(ByteBuffer target) throws IOException {
            return to.read(target);
        }

        @Override
        public long position() throws IOException {
            return to.position();
        }

        @Override
        public FileChannel position(long at) throws IOException {
            to.position(at);
            return this;
        }

        @Override
        public long size() throws IOException {
            return to.size();
        }

        @Override
        public FileLock tryLock(long at, long size, boolean shared) throws IOException {
            return to.tryLock(at, size, shared);
        }

        @Override
        protected void implCloseChannel() throws IOException {
            to.close();
        }
    }
}
