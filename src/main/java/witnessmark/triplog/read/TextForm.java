package witnessmark.triplog.read;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** How the text of a log stands in its bytes; all but the plain one is made plain as it is read. */
enum TextForm {
    /** ASCII or what builds on it, lines ended by line feeds. */
    PLAIN,
    /** The same, lines ended by carriage returns alone. */
    CARRIAGE_RETURNS,
    UTF_16_LITTLE_ENDIAN,
    UTF_16_BIG_ENDIAN;

    /** UTF-16 is known by the mark that begins it. */
    static TextForm of(byte[] head) {
        int mark = head.length < 2 ? 0 : (head[0] & 255) << 8 | head[1] & 255;
        if (mark == 0xFFFE) {
            return UTF_16_LITTLE_ENDIAN;
        }
        if (mark == 0xFEFF) {
            return UTF_16_BIG_ENDIAN;
        }
        return isMet('\r', head) && !isMet('\n', head) ? CARRIAGE_RETURNS : PLAIN;
    }

    private static boolean isMet(char character, byte[] bytes) {
        for (byte b : bytes) {
            if (b == character) {
                return true;
            }
        }
        return false;
    }

    InputStream plain(InputStream in) {
        return switch (this) {
            case PLAIN -> in;
            case CARRIAGE_RETURNS -> new LineFeeds(in);
            case UTF_16_LITTLE_ENDIAN -> new Utf8Stream(in, StandardCharsets.UTF_16LE);
            case UTF_16_BIG_ENDIAN -> new Utf8Stream(in, StandardCharsets.UTF_16BE);
        };
    }

    /** Carriage returns as line feeds. */
    private static final class LineFeeds extends FilterInputStream {
        LineFeeds(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int next = super.read();
            return next == '\r' ? '\n' : next;
        }

        @Override
        public int read(byte[] bytes, int from, int length) throws IOException {
            int read = super.read(bytes, from, length);
            for (int i = from; i < from + read; i++) {
                if (bytes[i] == '\r') {
                    bytes[i] = '\n';
                }
            }
            return read;
        }
    }
}
