package witnessmark.casefile.yaml;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** The known word that a mistyped one most likely stands for. */
final class NearestWord {
    private NearestWord() {}

    /** The nearest by Levenshtein distance, if at most two letters in five differ. */
    static Optional<String> of(String given, Collection<String> known) {
        if (given.length() > 100) {
            return Optional.empty();
        }
        return known.stream()
                .min(Comparator.comparingInt((String word) -> distance(given, word))
                        .thenComparing(Comparator.naturalOrder()))
                .filter(word -> distance(given, word) * 5 <= 2 * Math.max(given.length(), word.length()));
    }

    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int exchanged = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(exchanged, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
