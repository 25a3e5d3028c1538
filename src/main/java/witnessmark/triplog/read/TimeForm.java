package witnessmark.triplog.read;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How the times of a CSV log are written. Either a number in a unit ({@code seconds}, {@code milliseconds},
 * {@code microseconds}, {@code minutes}, {@code days}), or a pattern of the letters y M d H h m s S (fraction), a (AM or
 * PM), X (zone) and marks, also in quotes, as in {@code yyyy-MM-dd HH:mm:ss} and {@code yyyy-MM-dd'T'HH:mm:ssX}. A fraction
 * may always follow the seconds.
 */
final class TimeForm {
    private static final long BAD = Long.MIN_VALUE;
    private static final long DAY_MICROS = 86_400_000_000L;

    /** Marks, and the T between date and time, in the quotes that such patterns often have round them. */
    private static final String QUOTED_MARKS = "'([^A-Za-z']+|T)'";

    private static final long MOST_MICROS = 9_000_000_000_000L;

    /** Microseconds in the last digit of a number of seconds, by the count of decimals. */
    private static final long[] MICROS = {1_000_000, 100_000, 10_000, 1000, 100, 10, 1};

    private final String name;
    private final double numberMicros;
    private final char[] letters;
    private final int[] widths;
    private final ZoneId zone;
    private final boolean fixedZone;
    private int cachedYear = Integer.MIN_VALUE;
    private int cachedMonth;
    private int cachedDay;
    private long cachedMidnight;
    private final Minute minute = new Minute();

    private TimeForm(String name, double numberMicros, char[] letters, int[] widths, ZoneId zone) {
        this.name = name;
        this.numberMicros = numberMicros;
        this.letters = letters;
        this.widths = widths;
        this.zone = zone;
        this.fixedZone = zone instanceof ZoneOffset;
    }

    /** The form called {@code text}; empty if it is neither a number form nor a pattern with a date or with hours and minutes. */
    static Optional<TimeForm> of(String text, ZoneId zone) {
        double micros =
                switch (text.toLowerCase(Locale.ROOT)) {
                    case "seconds", "s" -> 1e6;
                    case "milliseconds", "ms" -> 1e3;
                    case "microseconds", "us" -> 1;
                    case "minutes", "min" -> 60e6;
                    case "hours", "h" -> 3600e6;
                    case "days", "d" -> DAY_MICROS;
                    default -> 0;
                };
        return micros > 0
                ? Optional.of(new TimeForm(text, micros, new char[0], new int[0], ZoneOffset.UTC))
                : pattern(text, zone);
    }

    private static Optional<TimeForm> pattern(String written, ZoneId zone) {
        // A fraction may follow the seconds whether the pattern says so or not.
        String text = written.replaceFirst("(?<=s)[.,]S+", "").replaceAll(QUOTED_MARKS, "$1");
        List<Character> letters = new ArrayList<>();
        List<Integer> widths = new ArrayList<>();
        for (int i = 0; i < text.length(); ) {
            char letter = text.charAt(i);
            int run = i;
            while (run < text.length() && text.charAt(run) == letter) {
                run++;
            }
            boolean known = "yMdHhmsSaX".indexOf(letter) >= 0;
            if (!known && Character.isLetter(letter) && letter != 'T') {
                return Optional.empty();
            }
            int times = known ? 1 : run - i;
            for (int k = 0; k < times; k++) {
                letters.add(letter);
                widths.add(run - i);
            }
            i = run;
        }
        boolean clock = letters.contains('m') && (letters.contains('H') || letters.contains('h'));
        boolean enough = clock || letters.containsAll(List.of('y', 'M', 'd'));
        return enough ? Optional.of(new TimeForm(written, 0, chars(letters), ints(widths), zone)) : Optional.empty();
    }

    private static char[] chars(List<Character> list) {
        char[] chars = new char[list.size()];
        for (int i = 0; i < chars.length; i++) {
            chars[i] = list.get(i);
        }
        return chars;
    }

    private static int[] ints(List<Integer> list) {
        return list.stream().mapToInt(Integer::intValue).toArray();
    }

    String name() {
        return name;
    }

    /** Whether it gives only the time of day, so that midnight has to be counted. */
    boolean isTimeOfDay() {
        return !isNumber() && new String(letters).indexOf('y') < 0;
    }

    boolean isNumber() {
        return numberMicros > 0;
    }

    /** Microseconds for a number read as mantissa and decimals; whole microseconds stay exact for seconds. */
    long fromNumber(long mantissa, int decimals) {
        if (numberMicros == 1e6 && decimals <= 6 && Math.abs(mantissa) < MOST_MICROS) {
            return mantissa * MICROS[decimals];
        }
        double micros = mantissa * numberMicros / NumberText.POWERS[decimals];
        return Math.abs(micros) < 1e18 ? Math.round(micros) : BAD;
    }

    static boolean isBad(long micros) {
        return micros == BAD;
    }

    static long bad() {
        return BAD;
    }

    /** Microseconds of the time written in {@code bytes[from, to)}, or the bad value. */
    long read(byte[] bytes, int from, int to) {
        return minute.fits(bytes, from, to) ? readSeconds(bytes, from, to) : readWhole(bytes, from, to);
    }

    /** Neighbouring rows share all but their seconds: only those are read. */
    private long readSeconds(byte[] bytes, int from, int to) {
        Fields f = new Fields();
        int end = readDigits(f, bytes, from + minute.length, to - minute.tailLength, 's', 2);
        return end == to - minute.tailLength && f.second <= 60 ? minute.micros + f.second * 1_000_000L + f.micros : BAD;
    }

    private long readWhole(byte[] bytes, int from, int to) {
        Fields f = new Fields();
        int p = from;
        int seconds = from;
        int afterSeconds = from;
        for (int i = 0; i < letters.length; i++) {
            int before = p;
            p = readPart(f, bytes, p, to, letters[i], widths[i]);
            if (p < 0) {
                return BAD;
            }
            if (letters[i] == 's') {
                seconds = before;
                afterSeconds = p;
            }
        }
        if (p != to || !f.inRange()) {
            return BAD;
        }
        long micros = micros(f);
        if (micros != BAD && seconds > from) {
            minute.remember(bytes, from, seconds, afterSeconds, to);
            minute.micros = micros - f.second * 1_000_000L - f.micros;
        }
        return micros;
    }

    /** What the last time read whole had before and after its seconds, and its microseconds without them. */
    private static final class Minute {
        private final byte[] head = new byte[32];
        private final byte[] tail = new byte[8];
        private int length;
        private int tailLength;
        private long micros;

        boolean fits(byte[] bytes, int from, int to) {
            return length > 0
                    && to - from > length + tailLength
                    && Arrays.equals(bytes, from, from + length, head, 0, length)
                    && Arrays.equals(bytes, to - tailLength, to, tail, 0, tailLength)
                    && (tailLength > 0 || isDigit(bytes[to - 1]));
        }

        void remember(byte[] bytes, int from, int seconds, int afterSeconds, int to) {
            boolean fitting = seconds - from <= head.length && to - afterSeconds <= tail.length;
            length = fitting ? seconds - from : 0;
            tailLength = fitting ? to - afterSeconds : 0;
            System.arraycopy(bytes, from, head, 0, length);
            System.arraycopy(bytes, to - tailLength, tail, 0, tailLength);
        }
    }

    private static int readPart(Fields f, byte[] bytes, int from, int to, char letter, int width) {
        return switch (letter) {
            case 'y', 'M', 'd', 'H', 'h', 'm', 's', 'S' -> readDigits(f, bytes, from, to, letter, width);
            case 'a' -> readHalfDay(f, bytes, from, to);
            case 'X' -> readZone(f, bytes, from, to);
            default -> readMark(bytes, from, to, letter);
        };
    }

    private static int readMark(byte[] bytes, int from, int to, char mark) {
        if (from >= to) {
            return -1;
        }
        boolean same = bytes[from] == mark || mark == 'T' && bytes[from] == ' ' || mark == ' ' && bytes[from] == 'T';
        return same ? from + 1 : -1;
    }

    private static int readDigits(Fields f, byte[] bytes, int from, int to, char letter, int width) {
        int p = from;
        int value = 0;
        int most = letter == 'y' ? 4 : letter == 'S' ? 9 : 2;
        while (p < to && p - from < most && bytes[p] >= '0' && bytes[p] <= '9') {
            value = value * 10 + bytes[p++] - '0';
        }
        if (p == from) {
            return -1;
        }
        switch (letter) {
            case 'y' -> f.year = width == 2 && value < 100 ? 2000 + value : value;
            case 'M' -> f.month = value;
            case 'd' -> f.day = value;
            case 'H', 'h' -> f.hour = value;
            case 'm' -> f.minute = value;
            case 'S' -> f.fraction(value, p - from);
            default -> {
                f.second = value;
                return readFraction(f, bytes, p, to);
            }
        }
        return p;
    }

    /** A fraction may follow the seconds, after a point or comma. */
    private static int readFraction(Fields f, byte[] bytes, int from, int to) {
        if (from + 1 >= to || bytes[from] != '.' && bytes[from] != ',' || !isDigit(bytes[from + 1])) {
            return from;
        }
        int p = from + 1;
        int value = 0;
        while (p < to && isDigit(bytes[p])) {
            if (p - from <= 6) {
                value = value * 10 + bytes[p] - '0';
            }
            p++;
        }
        f.fraction(value, Math.min(p - from - 1, 6));
        return p;
    }

    private static boolean isDigit(byte b) {
        return b >= '0' && b <= '9';
    }

    private static int readHalfDay(Fields f, byte[] bytes, int from, int to) {
        if (from + 1 >= to || (bytes[from + 1] | 32) != 'm') {
            return -1;
        }
        f.half = (bytes[from] | 32) == 'p' ? 12 : 0;
        f.halfGiven = true;
        return from + 2;
    }

    private static int readZone(Fields f, byte[] bytes, int from, int to) {
        if (from < to && (bytes[from] | 32) == 'z') {
            f.zoneGiven = true;
            return from + 1;
        }
        if (from + 3 > to || bytes[from] != '+' && bytes[from] != '-') {
            return from == to ? from : -1;
        }
        int sign = bytes[from] == '-' ? -1 : 1;
        int digits = 0;
        int value = 0;
        int p = from + 1;
        for (; p < to && digits < 4; p++) {
            if (isDigit(bytes[p])) {
                value = value * 10 + bytes[p] - '0';
                digits++;
            } else if (bytes[p] != ':') {
                return -1;
            }
        }
        f.zoneGiven = true;
        f.zoneMinutes = sign * (digits <= 2 ? value * 60 : value / 100 * 60 + value % 100);
        return p;
    }

    private long micros(Fields f) {
        int hour = f.halfGiven ? f.hour % 12 + f.half : f.hour;
        long inDay = ((hour * 60L + f.minute) * 60 + f.second) * 1_000_000 + f.micros;
        if (f.year == 0) {
            return inDay;
        }
        if (f.year != cachedYear || f.month != cachedMonth || f.day != cachedDay) {
            if (f.day > LocalDate.of(f.year, f.month, 1).lengthOfMonth()) {
                return BAD;
            }
            cachedMidnight = LocalDate.of(f.year, f.month, f.day).toEpochDay() * DAY_MICROS;
            cachedYear = f.year;
            cachedMonth = f.month;
            cachedDay = f.day;
        }
        long local = cachedMidnight + inDay;
        return local - offsetMicros(f, local);
    }

    private long offsetMicros(Fields f, long local) {
        if (f.zoneGiven) {
            return f.zoneMinutes * 60_000_000L;
        }
        if (fixedZone) {
            return ((ZoneOffset) zone).getTotalSeconds() * 1_000_000L;
        }
        LocalDateTime when = LocalDateTime.ofEpochSecond(local / 1_000_000, 0, ZoneOffset.UTC);
        return zone.getRules().getOffset(when).getTotalSeconds() * 1_000_000L;
    }

    private static final class Fields {
        private int year;
        private int month = 1;
        private int day = 1;
        private int hour;
        private int minute;
        private int second;
        private long micros;
        private int half;
        private boolean halfGiven;
        private boolean zoneGiven;
        private int zoneMinutes;

        void fraction(int value, int digits) {
            micros = Math.round(value * 1e6 / NumberText.POWERS[digits]);
        }

        boolean inRange() {
            return month >= 1 && month <= 12 && day >= 1 && day <= 31 && hour <= 24 && minute <= 59 && second <= 60;
        }
    }
}
