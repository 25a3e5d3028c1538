package witnessmark.triplog.read;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** Text of another character set as UTF-8; what is no character there becomes a question mark. */
final class Utf8Stream extends InputStream {
    private static final int CHARACTERS = 16 * 1024;

    private final Reader text;
    private final CharBuffer characters = CharBuffer.allocate(CHARACTERS).flip();
    private final ByteBuffer bytes = ByteBuffer.allocate(3 * CHARACTERS).flip();
    private final CharsetEncoder encoder = StandardCharsets.UTF_8
            .newEncoder()
            .onMalformedInput(CodingErrorAction.REPLACE)
            .onUnmappableCharacter(CodingErrorAction.REPLACE);
    private boolean ended;

    Utf8Stream(InputStream in, Charset charset) {
        text = new InputStreamReader(in, charset);
    }

    @Override
    public int read() throws IOException {
        return fill() ? bytes.get() & 255 : -1;
    }

    @Override
    public int read(byte[] to, int from, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (!fill()) {
            return -1;
        }
        int count = Math.min(length, bytes.remaining());
        bytes.get(to, from, count);
        return count;
    }

    /** Whether there are bytes left. The first half of a character of two waits for the other. */
    private boolean fill() throws IOException {
        while (!bytes.hasRemaining() && !ended) {
            characters.compact();
            ended = text.read(characters) < 0;
            characters.flip();
            bytes.clear();
            encoder.encode(characters, bytes, ended);
            bytes.flip();
        }
        return bytes.hasRemaining();
    }

    @Override
    public void close() throws IOException {
        text.close();
    }
}
