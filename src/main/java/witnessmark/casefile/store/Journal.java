package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.history.CanonicalText;

/**
 * Every entry of the store as a line of text beside the database, from which the database can be made anew.
 *
 * <p>A change is on the disk here before it is acknowledged. Files are begun anew at a size, each named by its first
 * line; only the last is written to, and only at its end. Whoever calls holds the turn of the store.
 */
final class Journal {
    private static final long FULL = 8_000_000;
    private static final int LONGEST_LINE = 8_000_000;

    private final Path folder;
    private final Disk disk;
    private @Nullable End known;
    private @Nullable Appended last;

    /** The end of the journal as this shell left it; another shell may have written since. */
    private record End(Path file, long size, StoreHead head) {}

    private record Appended(Path file, long sizeBefore) {}

    /** The journal in this folder, which need not be there. */
    Journal(Path folder, Disk disk) {
        this.folder = folder;
        this.disk = disk;
    }

    boolean isThere() {
        return Files.isDirectory(folder);
    }

    /** Whether it holds any line, whole or not. */
    boolean isEmpty() throws IOException {
        for (Path file : files()) {
            if (Files.size(file) > 0) {
                return false;
            }
        }
        return true;
    }

    /** Whether the journal ends with this line, as it does unless a shell was ended in the middle of a change. */
    boolean endsWith(StoreHead head) throws IOException {
        End end = known;
        if (end != null
                && end.head.equals(head)
                && !Files.exists(named(head.lines() + 1))
                && Files.exists(end.file)
                && end.size == Files.size(end.file)) {
            return true;
        }
        known = null;
        List<Path> files = files();
        if (files.isEmpty()) {
            return head.lines() == 0;
        }
        Path file = files.get(files.size() - 1);
        Optional<JournalText> text = lastLine(file);
        boolean so = text.isPresent()
                && text.get().left() == 0
                && head.equals(new StoreHead(
                        text.get().line().number(), text.get().line().hash()));
        if (so) {
            known = new End(file, Files.size(file), head);
        }
        return so;
    }

    /** The line that ends the file, or empty if the file does not end with a whole one. */
    private Optional<JournalText> lastLine(Path file) throws IOException {
        try (FileChannel in = FileChannel.open(file, StandardOpenOption.READ)) {
            long size = in.size();
            for (int length = 1 << 13; size > 0; length *= 4) {
                byte[] tail = new byte[(int) Math.min(length, size)];
                ByteBuffer rest = ByteBuffer.wrap(tail);
                while (rest.hasRemaining() && in.read(rest, size - rest.remaining()) >= 0) {
                    // until all of the tail is there
                }
                if (tail[tail.length - 1] != '\n') {
                    return Optional.empty();
                }
                int start = tail.length - 1;
                while (start > 0 && tail[start - 1] != '\n') {
                    start--;
                }
                if (start > 0 || tail.length == size) {
                    return JournalText.read(new String(tail, start, tail.length - 1 - start, UTF_8));
                }
                if (tail.length > LONGEST_LINE) {
                    return Optional.empty();
                }
            }
            return Optional.empty();
        }
    }

    /** Writes the lines of one change at the end, and on the disk; nothing of them stays if that fails. */
    void append(List<StoreLine> lines) throws IOException {
        append(lines, true);
    }

    private void append(List<StoreLine> lines, boolean synced) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (int i = 0; i < lines.size(); i++) {
            bytes.writeBytes(
                    new JournalText(lines.get(i), lines.size() - 1L - i).text().getBytes(UTF_8));
            bytes.write('\n');
        }
        Path file = fileFor(lines.get(0));
        StoreLine end = lines.get(lines.size() - 1);
        try (FileChannel out = disk.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            long size = out.size();
            try {
                write(out, size, ByteBuffer.wrap(bytes.toByteArray()));
                if (synced) {
                    out.force(size == 0);
                }
            } catch (IOException e) {
                out.truncate(size);
                throw e;
            }
            if (size == 0) {
                OwnerOnly.sync(folder);
            }
            last = new Appended(file, size);
            known = new End(file, out.size(), new StoreHead(end.number(), end.hash()));
        }
    }

    private static void write(FileChannel out, long at, ByteBuffer rest) throws IOException {
        while (rest.hasRemaining()) {
            at += out.write(rest, at);
        }
    }

    /** The last file, or a new one if there is none or it is full. A full one is checked before it is left. */
    private Path fileFor(StoreLine next) throws IOException {
        End end = known;
        List<Path> files = end == null ? files() : List.of(end.file);
        if (!files.isEmpty()) {
            Path open = files.get(files.size() - 1);
            if (Files.size(open) < FULL) {
                return open;
            }
            long first = firstLine(open);
            StoreHead before = new StoreHead(first - 1, beforeOf(open));
            Walk walk = new Walk(before, before);
            walk.file(open, change -> {});
            if (!walk.end.equals(new StoreHead(next.number() - 1, next.before()))) {
                throw new IOException("the journal file " + open.getFileName() + " is not whole");
            }
        }
        OwnerOnly.folder(folder);
        OwnerOnly.sync(folder.getParent());
        return named(next.number());
    }

    private Path named(long firstLine) {
        return folder.resolve("entries-%012d.jsonl".formatted(firstLine));
    }

    /** Takes the change appended last away again, when the database has not taken it. */
    void takeBack() throws IOException {
        Appended change = last;
        if (change != null) {
            try (FileChannel out = disk.open(change.file, StandardOpenOption.WRITE)) {
                out.truncate(change.sizeBefore);
                out.force(true);
            }
            last = null;
            known = null;
        }
    }

    /**
     * How far the journal could be followed.
     *
     * @param fits whether it knows the line it was to be followed from, and is whole but for a change cut off at its end
     * @param end the last line of the last whole change
     * @param tornFile the file in which something follows that is no whole change, null if nothing does
     * @param tornAt where in it, in bytes
     */
    record Followed(boolean fits, StoreHead end, @Nullable Path tornFile, long tornAt) {}

    /** Follows the journal from a line on and gives each whole change after it to the taker. */
    Followed follow(StoreHead from, Consumer<List<StoreLine>> taker) throws IOException {
        List<Path> files = files();
        int begin = -1;
        for (int i = 0; i < files.size(); i++) {
            if (firstLine(files.get(i)) <= from.lines() + 1) {
                begin = i;
            }
        }
        if (begin < 0) {
            return new Followed(from.lines() == 0 && files.isEmpty(), from, null, 0);
        }
        Path first = files.get(begin);
        StoreHead start =
                firstLine(first) == from.lines() + 1 ? from : new StoreHead(firstLine(first) - 1, beforeOf(first));
        Walk walk = new Walk(start, from);
        for (Path file : files.subList(begin, files.size())) {
            if (walk.tornFile != null) {
                walk.fits = false;
                break;
            }
            walk.file(file, taker);
        }
        if (walk.tornFile == null) {
            Path end = files.get(files.size() - 1);
            known = new End(end, Files.size(end), walk.end);
        }
        return new Followed(walk.fits && walk.reached, walk.end, walk.tornFile, walk.tornAt);
    }

    /** Cuts off what is no whole change, and so was never acknowledged; a copy of it is kept aside. */
    void cutOff(Followed walked) throws IOException {
        Path file = walked.tornFile;
        if (file == null) {
            return;
        }
        byte[] torn;
        try (InputStream in = Files.newInputStream(file)) {
            in.skipNBytes(walked.tornAt);
            torn = in.readAllBytes();
        }
        Path aside = folder.resolve("torn-after-line-%012d.txt".formatted(walked.end.lines()));
        try (FileChannel out = disk.open(aside, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            write(out, out.size(), ByteBuffer.wrap(torn));
            out.force(true);
        }
        try (FileChannel out = disk.open(file, StandardOpenOption.WRITE)) {
            out.truncate(walked.tornAt);
            out.force(true);
        }
        known = null;
    }

    /** Follows the chain from line to line. */
    private static final class Walk {
        private final StoreHead from;
        private StoreHead end;
        private boolean reached;
        private boolean fits = true;
        private @Nullable Path tornFile;
        private long tornAt;

        Walk(StoreHead start, StoreHead from) {
            this.from = from;
            this.end = start;
            this.reached = start.equals(from);
        }

        void file(Path file, Consumer<List<StoreLine>> taker) throws IOException {
            List<StoreLine> change = new ArrayList<>();
            StoreHead at = end;
            long wholeTo = 0;
            long read = 0;
            try (InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
                for (byte[] line = line(in); line.length > 0; line = line(in)) {
                    read += line.length;
                    Optional<JournalText> text = line[line.length - 1] == '\n'
                            ? JournalText.read(new String(line, 0, line.length - 1, UTF_8))
                            : Optional.empty();
                    if (text.isEmpty()) {
                        break;
                    }
                    if (!text.get().line().follows(at.lines(), at.hash())) {
                        // A line that is whole but follows from another was not cut off: it is of another journal.
                        fits = false;
                        break;
                    }
                    StoreLine next = text.get().line();
                    change.add(next);
                    at = new StoreHead(next.number(), next.hash());
                    if (text.get().left() == 0) {
                        wholeTo = read;
                        end = at;
                        take(change, taker);
                        change.clear();
                    }
                }
            }
            if (wholeTo < Files.size(file)) {
                tornFile = file;
                tornAt = wholeTo;
            }
        }

        private void take(List<StoreLine> change, Consumer<List<StoreLine>> taker) {
            if (reached) {
                taker.accept(List.copyOf(change));
            } else if (end.equals(from)) {
                reached = true;
            }
        }

        private static byte[] line(InputStream in) throws IOException {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream(512);
            for (int b = in.read(); b >= 0; b = in.read()) {
                bytes.write(b);
                if (b == '\n' || bytes.size() > LONGEST_LINE) {
                    break;
                }
            }
            return bytes.toByteArray();
        }
    }

    /**
     * Writes the journal of a store that has none, and puts it in place whole.
     *
     * @param lines gives the lines of the store, in order and in heaps, to the taker it is handed
     * @param aside where one that is there is moved to
     */
    void begin(Consumer<Consumer<List<StoreLine>>> lines, Path aside) throws IOException {
        Path making = folder.resolveSibling("journal-in-the-making");
        Journal anew = new Journal(making, disk);
        for (Path left : anew.files()) {
            Files.delete(left);
        }
        OwnerOnly.folder(making);
        try {
            lines.accept(anew::appendUnsynced);
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        for (Path written : anew.files()) {
            try (FileChannel out = disk.open(written, StandardOpenOption.WRITE)) {
                out.force(true);
            }
        }
        OwnerOnly.sync(making);
        if (isThere()) {
            disk.move(folder, aside);
        }
        disk.move(making, folder);
        known = null;
    }

    private void appendUnsynced(List<StoreLine> lines) {
        try {
            append(lines, false);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static long firstLine(Path file) {
        return Long.parseLong(file.getFileName().toString().replaceAll("\\D", ""));
    }

    private static String beforeOf(Path file) throws IOException {
        if (firstLine(file) == 1) {
            return CanonicalText.NO_HASH;
        }
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            byte[] line = Walk.line(in);
            return JournalText.read(new String(line, 0, Math.max(0, line.length - 1), UTF_8))
                    .map(t -> t.line().before())
                    .orElse("");
        }
    }

    /** The files, oldest first. */
    private List<Path> files() throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(f -> f.getFileName().toString().matches("entries-\\d{12}\\.jsonl"))
                    .sorted()
                    .toList();
        }
    }
}
