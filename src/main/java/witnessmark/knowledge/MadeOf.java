package witnessmark.knowledge;

import java.util.List;
import java.util.stream.Stream;

/**
 * A circumstance that nobody is asked for: several answers together are it.
 *
 * @param finding the circumstance, present where the rest holds
 * @param present findings each of which is present; at least one
 * @param absent findings each of which was looked for and is absent
 * @param unless findings none of which is present
 */
public record MadeOf(String finding, List<String> present, List<String> absent, List<String> unless) {
    public MadeOf {
        present = List.copyOf(present);
        absent = List.copyOf(absent);
        unless = List.copyOf(unless);
    }

    /** Every finding that it turns on, each once unless it was written twice. */
    public List<String> members() {
        return Stream.of(present, absent, unless).flatMap(List::stream).toList();
    }
}
