package witnessmark.gearbox.formula;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A formula as the program prints it, worked out the way a reader would: letters side by side multiply, a slash divides what
 * stands before it, angles are degrees, {@code where} names parts, a semicolon begins words.
 */
public record Formula(Optional<String> letter, String expression, Map<String, String> parts) {

    public static Formula of(String printed) {
        String formula = printed.split(";")[0].strip();
        String[] where = formula.split(" where ", 2);
        Map<String, String> parts = new HashMap<>();
        if (where.length == 2) {
            for (String part : where[1].split(",(?=\\s*\\w+ = )")) {
                String[] sides = part.split("=", 2);
                parts.put(sides[0].strip(), sides[1].strip());
            }
        }
        String[] sides = where[0].split("=", 2);
        return sides.length == 2
                ? new Formula(Optional.of(sides[0].strip()), sides[1].strip(), parts)
                : new Formula(Optional.empty(), where[0], parts);
    }

    /** Throws where the formula has a letter that stands for nothing. */
    public double value(Map<String, Double> letters) {
        return new Reader(expression, letters).all();
    }

    private final class Reader {
        private final String text;
        private final Map<String, Double> letters;
        private int at;

        private Reader(String text, Map<String, Double> letters) {
            this.text = text;
            this.letters = letters;
        }

        private double all() {
            double value = sum();
            if (peek() != 0) {
                throw new IllegalArgumentException("cannot be worked out from '" + text.substring(at) + "': " + text);
            }
            return value;
        }

        private char peek() {
            while (at < text.length() && text.charAt(at) == ' ') {
                at++;
            }
            return at < text.length() ? text.charAt(at) : 0;
        }

        private boolean take(char sign) {
            if (peek() != sign) {
                return false;
            }
            at++;
            return true;
        }

        private double sum() {
            double value = take('-') ? -product() : product();
            while (true) {
                if (take('+')) {
                    value += product();
                } else if (take('-')) {
                    value -= product();
                } else {
                    return value;
                }
            }
        }

        private double product() {
            double value = power();
            while (true) {
                if (take('/')) {
                    value /= power();
                } else if (Character.isLetterOrDigit(peek()) || peek() == '(') {
                    value *= power();
                } else {
                    return value;
                }
            }
        }

        private double power() {
            double base = one();
            return take('^') ? Math.pow(base, one()) : base;
        }

        private double one() {
            if (take('(')) {
                double value = sum();
                take(')');
                return value;
            }
            int from = at;
            while (at < text.length()
                    && (Character.isLetterOrDigit(text.charAt(at)) || "_.".indexOf(text.charAt(at)) >= 0)) {
                at++;
            }
            String word = text.substring(from, at);
            if (word.isEmpty()) {
                throw new IllegalArgumentException("nothing to read at " + at + " of: " + text);
            }
            if (Character.isDigit(word.charAt(0))) {
                return Double.parseDouble(word);
            }
            return at < text.length() && text.charAt(at) == '(' && isFunction(word) ? function(word) : letter(word);
        }

        private double letter(String word) {
            if (word.equals("pi")) {
                return Math.PI;
            }
            if (parts.containsKey(word)) {
                return new Reader(parts.get(word), letters).all();
            }
            Double value = letters.get(word);
            if (value == null) {
                throw new IllegalArgumentException("letter " + word + " stands for nothing in: " + text);
            }
            return value;
        }

        private double function(String name) {
            take('(');
            double value = sum();
            while (take(',')) {
                double other = sum();
                value = name.equals("min") ? Math.min(value, other) : Math.max(value, other);
            }
            take(')');
            return switch (name) {
                case "sin" -> Math.sin(Math.toRadians(value));
                case "cos" -> Math.cos(Math.toRadians(value));
                case "tan" -> Math.tan(Math.toRadians(value));
                case "asin" -> Math.toDegrees(Math.asin(value));
                case "acos" -> Math.toDegrees(Math.acos(Math.min(1, value)));
                case "atan" -> Math.toDegrees(Math.atan(value));
                case "sqrt" -> Math.sqrt(value);
                case "ln" -> Math.log(value);
                case "abs" -> Math.abs(value);
                default -> value;
            };
        }

        private static boolean isFunction(String word) {
            return switch (word) {
                case "sin", "cos", "tan", "asin", "acos", "atan", "sqrt", "ln", "abs", "min", "max" -> true;
                default -> false;
            };
        }
    }
}
