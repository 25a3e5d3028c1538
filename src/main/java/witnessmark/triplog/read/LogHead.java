package witnessmark.triplog.read;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/**
 * The first bytes of a log file: what form it has, whether it is compressed, and its first lines.
 *
 * @param file the file, or the name of an object of a store
 * @param bytes what it holds
 * @param format CSV or candump text
 * @param compressed whether it is gzip
 * @param form how its text stands in its bytes
 * @param text the first lines, cut after the last whole one
 */
public record LogHead(Path file, LogBytes bytes, LogFormat format, boolean compressed, TextForm form, String text) {
    private static final int HEAD_BYTES = 64 * 1024;
    private static final int GZIP_MAGIC = 0x1F8B;

    /** @throws UnreadableLog if there is no such file, it is empty, or it is not text */
    public static LogHead of(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new UnreadableLog(file + ": no such file, or not a plain file", "check the name");
        }
        return of(file, LogBytes.of(file));
    }

    /** The same of bytes that need not be a file of this machine; {@code file} names them. */
    public static LogHead of(Path file, LogBytes bytes) {
        boolean compressed;
        byte[] head;
        try (InputStream in = unpacked(bytes)) {
            compressed = in instanceof GZIPInputStream;
            head = head(in);
        } catch (ZipException e) {
            throw new UnreadableLog(
                    file + ": begins like a gzip file but is damaged (" + e.getMessage() + ")",
                    "copy it anew from where it was written");
        } catch (EOFException e) {
            throw new UnreadableLog(
                    file + ": the packed file is cut off before its first row",
                    "copy it anew from where it was written");
        } catch (IOException e) {
            throw new UnreadableLog(
                    file + ": cannot be read (" + WhyUnreadable.of(e) + ")",
                    "check the file, and that you may read it");
        }
        TextForm form = TextForm.of(head);
        String text = text(plain(form, head), head.length == HEAD_BYTES);
        return new LogHead(file, bytes, format(file, plain(form, head), text), compressed, form, text);
    }

    /** What the log says, unpacked if it is gzip; its hash is taken of this. */
    public static InputStream unpacked(LogBytes bytes) throws IOException {
        boolean compressed;
        try (InputStream in = bytes.open()) {
            compressed = (in.read() << 8 | in.read()) == GZIP_MAGIC;
        }
        InputStream plain = bytes.open();
        try {
            return compressed ? new GZIPInputStream(plain, 64 * 1024) : plain;
        } catch (IOException e) {
            plain.close();
            throw e;
        }
    }

    private static byte[] head(InputStream in) throws IOException {
        byte[] bytes = new byte[HEAD_BYTES];
        int length = 0;
        try {
            int read;
            while (length < bytes.length && (read = in.read(bytes, length, bytes.length - length)) > 0) {
                length += read;
            }
        } catch (EOFException cut) {
            // Truncated gzip data: what came before the cut is enough to tell the form.
        }
        return Arrays.copyOf(bytes, length);
    }

    private static byte[] plain(TextForm form, byte[] head) {
        try {
            return form.plain(new ByteArrayInputStream(head)).readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static LogFormat format(Path file, byte[] bytes, String text) {
        if (bytes.length == 0) {
            throw new UnreadableLog(file + ": the file is empty", "give a log with rows");
        }
        if (isEverySecondZero(bytes)) {
            throw new UnreadableLog(
                    file + ": UTF-16 text without the mark that begins it",
                    "save it as UTF-8 or plain text and read it again");
        }
        if (binaryShare(bytes) > 0.02) {
            throw new UnreadableLog(
                    file + ": not a text file",
                    "a CSV or candump text log is expected, plain or gzip (binary logs must be exported as text first)");
        }
        boolean frames = text.lines()
                .limit(200)
                .anyMatch(l -> l.matches("\\s*\\(\\d+\\.\\d+\\)\\s+\\S+\\s+[0-9A-Fa-f]{3,8}(#|\\s).*"));
        return frames ? LogFormat.CANDUMP : LogFormat.CSV;
    }

    /** As in UTF-16 of plain letters and digits. */
    private static boolean isEverySecondZero(byte[] bytes) {
        int[] zeros = new int[2];
        for (int i = 0; i < bytes.length; i++) {
            zeros[i % 2] += bytes[i] == 0 ? 1 : 0;
        }
        int most = Math.max(zeros[0], zeros[1]);
        return most > 0.45 * bytes.length && Math.min(zeros[0], zeros[1]) < 0.01 * bytes.length;
    }

    private static double binaryShare(byte[] bytes) {
        int odd = 0;
        for (byte b : bytes) {
            if (b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r' && b != '\f') {
                odd++;
            }
        }
        return (double) odd / bytes.length;
    }

    private static String text(byte[] bytes, boolean goesOn) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        String noMark = text.startsWith("\uFEFF") ? text.substring(1) : text;
        int last = noMark.lastIndexOf('\n');
        return last > 0 && goesOn ? noMark.substring(0, last + 1) : noMark;
    }

    /** The mapping that the header of a CSV log proposes. */
    public GuessMapping.Guess guess() {
        return GuessMapping.from(file.getFileName().toString(), text);
    }

    CsvPlan plan(ColumnMapping mapping) {
        return CsvPlan.of(file.getFileName().toString(), mapping, columnNames(mapping));
    }

    /** Of the lines before the first row, the one that names the time's column, for notes may stand above; else the first. */
    List<String> columnNames(ColumnMapping mapping) {
        List<List<String>> lines = text.lines()
                .limit(mapping.headerLines())
                .map(line -> GuessMapping.header(line, mapping.separator()))
                .toList();
        return lines.stream()
                .filter(names -> names.stream().anyMatch(mapping.time().column().strip()::equalsIgnoreCase))
                .findFirst()
                .orElse(lines.isEmpty() ? List.of() : lines.get(0));
    }

    long size() {
        try {
            return bytes.size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
