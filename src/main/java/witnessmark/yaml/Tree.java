package witnessmark.yaml;

import java.util.List;

/** A YAML document as a tree of values with their places (line and column, 1-based). */
sealed interface Tree {

    int line();

    int column();

    /** A single value. */
    record Text(String value, int line, int column) implements Tree {}

    /** Nothing stands there, or the word null. */
    record Nothing(int line, int column) implements Tree {}

    /** A list. */
    record Items(List<Tree> items, int line, int column) implements Tree {}

    /** A map; a name may stand twice, which its reader refuses. */
    record Entries(List<Entry> entries, int line, int column) implements Tree {}

    /** A named value; the name is a tree of its own, since outside files may have anything there. */
    record Entry(Tree name, Tree value) {}
}
