package witnessmark.yaml;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds the known word that a mistyped one most likely means: letters changed, left out, put in, or exchanged with their
 * neighbour, in at most a third of the word.
 */
public final class Nearest {
    private Nearest() {}

    public static Optional<String> to(String word, Collection<String> known) {
        return some(word, known, 1).stream().findFirst();
    }

    /** The nearest known words, best first; none if none is near. */
    public static List<String> some(String word, Collection<String> known, int most) {
        if (word.length() > 100) {
            return List.of();
        }
        record Ranked(String word, int distance) {}
        List<Ranked> ranked = new ArrayList<>();
        for (String candidate : known) {
            int distance = distance(word, candidate);
            boolean shares = candidate.contains(word) || (word.contains(candidate) && candidate.length() > 3);
            if (distance <= Math.max(1, word.length() / 3) || (shares && word.length() > 2)) {
                ranked.add(new Ranked(candidate, distance));
            }
        }
        return ranked.stream()
                .sorted(Comparator.comparingInt(Ranked::distance).thenComparing(Ranked::word))
                .limit(most)
                .map(Ranked::word)
                .toList();
    }

    /** The mend for a word that is not known: up to three that it may mean, {@code otherwise} if none is near. */
    public static String mend(String word, Collection<String> known, String otherwise) {
        List<String> near = some(word, known, 3);
        return near.isEmpty() ? otherwise : "did you mean " + String.join(", ", near) + "?";
    }

    /** Optimal string alignment: Levenshtein's distance with two neighbours exchanged counted as one change. */
    private static int distance(String a, String b) {
        int[] twoBefore = new int[b.length() + 1];
        int[] before = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            before[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = before[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, Math.min(before[j], row[j - 1]) + 1);
                boolean exchanged =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                row[j] = exchanged ? Math.min(row[j], twoBefore[j - 2] + 1) : row[j];
            }
            twoBefore = before;
            before = row;
        }
        return before[b.length()];
    }
}
