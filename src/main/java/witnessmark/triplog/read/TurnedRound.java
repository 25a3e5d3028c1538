package witnessmark.triplog.read;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.zip.ZipException;

/**
 * The lines of a log whose newest row comes first: those of the header as they stand, then the last line of the file, the
 * one before it, and so on. The text is set down in a file that goes with the stream, so that memory stays bounded.
 */
final class TurnedRound extends InputStream {
    /** Longer than any line that is read; a longer one comes in pieces, each of which is too long as well. */
    private static final int BLOCK = 256 * 1024;

    private final FileChannel kept;
    /** Where the header ends; the rows lie behind it. */
    private final long headerEnd;

    private final long lines;
    /** Whether a packed file broke off, so that its oldest rows are missing. */
    private final boolean cutOff;

    private final byte[] turned = new byte[BLOCK + 1];
    private int at;
    private int size;
    /** The header is handed on up to here, and then the rows down from the end of the file. */
    private long header;

    private long rowsEnd;

    /** @param text the log as it stands; it is read to its end here, and closed by whoever opened it */
    TurnedRound(InputStream text, int headerLines) throws IOException {
        Path file = Files.createTempFile("log-turned-", ".csv");
        kept = FileChannel.open(
                file, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
        byte[] block = new byte[BLOCK];
        long seen = 0;
        long newlines = 0;
        long headerSeen = headerLines == 0 ? 0 : -1;
        int last = '\n';
        boolean cut = false;
        try {
            int read;
            while ((read = text.read(block)) > 0) {
                for (int i = 0; i < read; i++) {
                    if (block[i] == '\n' && ++newlines == headerLines) {
                        headerSeen = seen + i + 1;
                    }
                }
                last = block[read - 1];
                seen += read;
                write(ByteBuffer.wrap(block, 0, read));
            }
        } catch (EOFException | ZipException broken) {
            cut = true;
        } catch (IOException e) {
            kept.close();
            throw e;
        }
        headerEnd = headerSeen < 0 ? seen : headerSeen;
        lines = newlines + (last == '\n' ? 0 : 1);
        rowsEnd = seen;
        cutOff = cut;
    }

    private void write(ByteBuffer bytes) throws IOException {
        while (bytes.hasRemaining()) {
            kept.write(bytes);
        }
    }

    /** How many lines the file has, those of the header among them. */
    long lines() {
        return lines;
    }

    boolean isCutOff() {
        return cutOff;
    }

    @Override
    public int read() throws IOException {
        return hasMore() ? turned[at++] & 255 : -1;
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
        if (!hasMore()) {
            return -1;
        }
        int count = Math.min(length, size - at);
        System.arraycopy(turned, at, bytes, from, count);
        at += count;
        return count;
    }

    private boolean hasMore() throws IOException {
        if (at == size) {
            at = 0;
            size = header < headerEnd ? nextOfHeader() : nextRows();
        }
        return size > 0;
    }

    private int nextOfHeader() throws IOException {
        byte[] bytes = bytes(header, (int) Math.min(BLOCK, headerEnd - header));
        System.arraycopy(bytes, 0, turned, 0, bytes.length);
        header += bytes.length;
        return bytes.length;
    }

    /** Turns the whole lines of the last block that was not handed on yet; what it has of a line before them waits. */
    private int nextRows() throws IOException {
        if (rowsEnd == headerEnd) {
            return 0;
        }
        long from = Math.max(headerEnd, rowsEnd - BLOCK);
        byte[] bytes = bytes(from, (int) (rowsEnd - from));
        int first = from == headerEnd ? 0 : afterNewline(bytes);
        int length = 0;
        int end = bytes.length;
        while (end > first) {
            int begin = beginOfLine(bytes, first, end);
            System.arraycopy(bytes, begin, turned, length, end - begin);
            length += end - begin;
            if (turned[length - 1] != '\n') {
                turned[length++] = '\n';
            }
            end = begin;
        }
        rowsEnd = from + first;
        return length;
    }

    /** Where the first whole line begins; 0 if the block is but a piece of one. */
    private static int afterNewline(byte[] bytes) {
        for (int i = 0; i < bytes.length - 1; i++) {
            if (bytes[i] == '\n') {
                return i + 1;
            }
        }
        return 0;
    }

    private static int beginOfLine(byte[] bytes, int first, int end) {
        int begin = end - 1;
        while (begin > first && bytes[begin - 1] != '\n') {
            begin--;
        }
        return begin;
    }

    private byte[] bytes(long from, int count) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(count);
        while (bytes.hasRemaining()) {
            if (kept.read(bytes, from + bytes.position()) < 0) {
                throw new EOFException("the file set down for turning was cut short");
            }
        }
        return bytes.array();
    }

    @Override
    public void close() throws IOException {
        kept.close();
    }
}
