package witnessmark.document.print;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import witnessmark.document.ShippedFont;

/**
 * A font that joins no letters: with "ff" drawn as one sign, a hash copied from paper would not be the hash. The table
 * that names such signs (GSUB of the OpenType format) gets a name that nobody looks for.
 */
final class LooseLetters {
    private static final int DIRECTORY = 12;
    private static final int RECORD = 16;
    private static final int NUMBER_OF_TABLES = 4;
    private static final int JOINS = tag("GSUB");
    private static final int UNKNOWN = tag("gsub");

    private LooseLetters() {}

    static InputStream of(ShippedFont font) {
        try (InputStream in = font.open()) {
            byte[] bytes = in.readAllBytes();
            ByteBuffer file = ByteBuffer.wrap(bytes);
            for (int table = 0; table < file.getShort(NUMBER_OF_TABLES); table++) {
                int at = DIRECTORY + RECORD * table;
                if (file.getInt(at) == JOINS) {
                    file.putInt(at, UNKNOWN);
                }
            }
            return new ByteArrayInputStream(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static int tag(String name) {
        return ByteBuffer.wrap(name.getBytes(StandardCharsets.US_ASCII)).getInt();
    }
}
