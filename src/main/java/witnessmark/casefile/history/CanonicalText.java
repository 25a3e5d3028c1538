package witnessmark.casefile.history;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import witnessmark.casefile.PlainNumber;

/**
 * The one text form of a change and of an entry, over which the hash of an entry is taken.
 *
 * <p>A change is JSON (RFC 8259) without blanks: its kind, then what it holds in the order of {@code form()}; what is
 * not said is left out; numbers as {@link PlainNumber} writes them; in texts {@code "} and {@code \} follow a
 * backslash, a new line is {@code \n}, a tab {@code \t}, every other character stands for itself.
 *
 * <p>An entry is five lines of UTF-8, each ended by one line feed:
 *
 * <pre>
 * entry 3
 * 2026-03-02T08:15:00.000Z
 * "who made it, as a JSON text"
 * hash of the entry before it; of the first entry 64 zeros
 * {"kind":"note-added","note":"..."}
 * </pre>
 *
 * The hash of the entry is the SHA-256 (FIPS 180-4) of these bytes in lower-case hexadecimal.
 */
public final class CanonicalText {
    /** What stands in the first entry in place of a hash before it. */
    public static final String NO_HASH = "0".repeat(64);

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern(
                    "uuuu-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    private CanonicalText() {}

    /** The change with its kind, as a map of text, number, truth, map or list. */
    public static Map<String, Object> form(Change change) {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("kind", change.kind());
        form.putAll(change.form());
        return form;
    }

    /** The change as text of one line. */
    public static String of(Change change) {
        StringBuilder out = new StringBuilder();
        write(form(change), out);
        return out.toString();
    }

    /** The time to the millisecond, in UTC. */
    public static String of(Instant time) {
        return TIME.format(time);
    }

    /** The text in quotes. */
    public static String quoted(String text) {
        StringBuilder out = new StringBuilder(text.length() + 2);
        writeText(text, out);
        return out.toString();
    }

    /** The hash of an entry whose change is already written as text. */
    public static String hash(long number, Instant time, String who, String change, String previousHash) {
        return sha256(
                ("entry " + number + "\n" + of(time) + "\n" + quoted(who) + "\n" + previousHash + "\n" + change + "\n")
                        .getBytes(StandardCharsets.UTF_8));
    }

    /** The SHA-256 of the bytes in lower-case hexadecimal. */
    public static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static void write(Object value, StringBuilder out) {
        if (value instanceof Map<?, ?> map) {
            out.append('{');
            for (Iterator<? extends Map.Entry<?, ?>> i = map.entrySet().iterator(); i.hasNext(); ) {
                Map.Entry<?, ?> member = i.next();
                writeText((String) member.getKey(), out);
                out.append(':');
                write(member.getValue(), out);
                out.append(i.hasNext() ? "," : "");
            }
            out.append('}');
        } else if (value instanceof List<?> list) {
            out.append('[');
            for (Iterator<?> i = list.iterator(); i.hasNext(); ) {
                write(i.next(), out);
                out.append(i.hasNext() ? "," : "");
            }
            out.append(']');
        } else if (value instanceof Double number) {
            out.append(PlainNumber.of(number));
        } else if (value instanceof Boolean) {
            out.append(value);
        } else {
            writeText((String) value, out);
        }
    }

    private static void writeText(String text, StringBuilder out) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"', '\\' -> out.append('\\').append(c);
                case '\n' -> out.append("\\n");
                case '\t' -> out.append("\\t");
                default -> out.append(c);
            }
        }
        out.append('"');
    }
}
