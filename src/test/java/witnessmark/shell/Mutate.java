package witnessmark.shell;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Changes inputs at random as hands, editors, recorders and disks do; the same seed makes the same changes. */
final class Mutate {
    private static final int MOST_CHANGES = 6;
    private static final int LONGEST_PART = 200;
    private static final List<byte[]> ODD = List.of(
                    "",
                    "\0",
                    "\u0007",
                    "\t",
                    "\r",
                    "\n\n",
                    " ",
                    "'",
                    "\"",
                    "\\",
                    "%s",
                    "{0}",
                    "{{",
                    "}}",
                    "{{{x}}}",
                    "{{#a}}",
                    "[",
                    "]",
                    "[[[[[[[[[[[[",
                    "{",
                    "}",
                    ":",
                    ": ",
                    "- ",
                    "#",
                    "&a",
                    "*a",
                    "!!x",
                    "|",
                    ">",
                    "---",
                    "...",
                    "?",
                    "@",
                    "`",
                    ",",
                    ";",
                    "=",
                    "--",
                    "-1",
                    "0",
                    "00",
                    "-0",
                    "NaN",
                    "Infinity",
                    "1e400",
                    "1e-400",
                    "99999999999999999999",
                    "2147483648",
                    "0x10",
                    "1,5",
                    "1.5.5",
                    "true",
                    "null",
                    "~",
                    "<",
                    ">",
                    "&",
                    "<!DOCTYPE x>",
                    "<script>",
                    "</div>",
                    "\u202E",
                    "\uFEFF",
                    "\u0301",
                    "漢",
                    "😀",
                    "é",
                    "present",
                    "absent",
                    "unsure",
                    "no",
                    "../../x",
                    "/dev/null",
                    "a".repeat(3_000),
                    "2026-02-30",
                    "25:61")
            .stream()
            .map(text -> text.getBytes(UTF_8))
            .toList();

    private final Random random;

    Mutate(long seed) {
        random = new Random(seed);
    }

    /** One of the inputs with one to six changes; parts of the others may come into it. */
    byte[] one(List<byte[]> inputs) {
        byte[] input = any(inputs);
        for (int changes = 1 + random.nextInt(MOST_CHANGES); changes > 0; changes--) {
            input = changed(input, inputs);
        }
        return input;
    }

    <T> T any(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    private byte[] changed(byte[] input, List<byte[]> inputs) {
        int from = random.nextInt(input.length + 1);
        int to = Math.min(input.length, from + random.nextInt(LONGEST_PART));
        return switch (random.nextInt(10)) {
            case 0 -> put(input, from, Math.min(input.length, from + 1), new byte[] {(byte) random.nextInt(256)});
            case 1 -> put(input, from, from, any(ODD));
            case 2 -> put(input, from, to, any(ODD));
            case 3 -> put(input, from, to, new byte[0]);
            case 4 -> put(input, to, to, Arrays.copyOfRange(input, from, to));
            case 5 -> put(input, from, to, part(any(inputs)));
            case 6 -> random.nextInt(4) == 0 ? Arrays.copyOf(input, from) : lineTwice(input, from);
            case 7 -> figure(input, from);
            case 8 -> lineGone(input, from);
            default -> word(input, from);
        };
    }

    private byte[] part(byte[] input) {
        int from = random.nextInt(input.length + 1);
        return Arrays.copyOfRange(input, from, Math.min(input.length, from + random.nextInt(LONGEST_PART)));
    }

    private static byte[] put(byte[] input, int from, int to, byte[] part) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(input.length + part.length);
        out.write(input, 0, from);
        out.writeBytes(part);
        out.write(input, to, input.length - to);
        return out.toByteArray();
    }

    private static int lineStart(byte[] input, int at) {
        int start = Math.min(at, input.length);
        while (start > 0 && input[start - 1] != '\n') {
            start--;
        }
        return start;
    }

    private static int lineEnd(byte[] input, int at) {
        int end = at;
        while (end < input.length && input[end] != '\n') {
            end++;
        }
        return Math.min(input.length, end + 1);
    }

    private static byte[] lineTwice(byte[] input, int at) {
        int start = lineStart(input, at);
        return put(input, start, start, Arrays.copyOfRange(input, start, lineEnd(input, at)));
    }

    private static byte[] lineGone(byte[] input, int at) {
        return put(input, lineStart(input, at), lineEnd(input, at), new byte[0]);
    }

    /** The next figure of the text becomes an odd one. */
    private byte[] figure(byte[] input, int at) {
        int from = at;
        while (from < input.length && !Character.isDigit(input[from])) {
            from++;
        }
        int to = from;
        while (to < input.length && (Character.isDigit(input[to]) || input[to] == '.')) {
            to++;
        }
        return put(input, from, to, any(ODD));
    }

    /** The next word of the text becomes an odd one. */
    private byte[] word(byte[] input, int at) {
        int from = at;
        while (from < input.length && !Character.isLetter(input[from])) {
            from++;
        }
        int to = from;
        while (to < input.length && (Character.isLetter(input[to]) || input[to] == '-')) {
            to++;
        }
        return put(input, from, to, any(ODD));
    }
}
