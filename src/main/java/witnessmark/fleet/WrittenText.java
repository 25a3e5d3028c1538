package witnessmark.fleet;

import java.io.IOException;
import java.io.InputStream;
import java.io.Serializable;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import witnessmark.triplog.read.LogBytes;
import witnessmark.triplog.read.UnreadableLog;
import witnessmark.triplog.read.WhyUnreadable;

/**
 * A profile or a mapping as it was written, or why it cannot be read.
 *
 * @param text empty where it cannot be read
 * @param fault empty where it can
 */
public record WrittenText(String text, String fault) implements Serializable {
    private static final int MOST_BYTES = 400_000;

    public static WrittenText of(String text) {
        return new WrittenText(text, "");
    }

    public static WrittenText unreadable(String why) {
        return new WrittenText("", why);
    }

    /** What a small file holds. */
    public static WrittenText of(LogBytes file) {
        try (InputStream in = file.open()) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            if (bytes.length > MOST_BYTES) {
                return unreadable("it has more than " + MOST_BYTES + " bytes");
            }
            return of(StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString());
        } catch (CharacterCodingException e) {
            return unreadable("it is not UTF-8 text");
        } catch (IOException e) {
            return unreadable(WhyUnreadable.of(e));
        }
    }

    /** @throws UnreadableLog where it cannot be read, which then keeps a log from being read */
    String orRefused(String what) {
        if (!fault.isEmpty()) {
            throw new UnreadableLog(what + " cannot be read (" + fault + ")");
        }
        return text;
    }
}
