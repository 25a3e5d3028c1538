package witnessmark.document.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import witnessmark.document.DocumentRefused;

/** Words of the trade with their plain meaning. */
public final class Glossary {
    private final List<Field> entries;

    private Glossary(List<Field> entries) {
        this.entries = entries;
    }

    /** From text with one {@code word = meaning} a line; lines that begin with # are left out. */
    public static Glossary parse(String text) {
        List<Field> entries = new ArrayList<>();
        int number = 0;
        for (String line : text.split("\n", -1)) {
            number++;
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            int equals = line.indexOf('=');
            if (equals < 1 || line.substring(equals + 1).isBlank()) {
                throw new DocumentRefused(
                        "glossary.txt:" + number + ": the line is not 'word = meaning'", "write it so, or take it out");
            }
            entries.add(new Field(
                    line.substring(0, equals).strip(),
                    line.substring(equals + 1).strip()));
        }
        return new Glossary(List.copyOf(entries));
    }

    /** The entries whose word, or its plural, stands in the text. */
    List<Field> wordsIn(String text) {
        Set<Field> used = used(text);
        // The meanings use words of the trade too.
        Set<Field> explained = used(used.stream().map(Field::value).collect(Collectors.joining(" ")));
        return entries.stream()
                .filter(e -> used.contains(e) || explained.contains(e))
                .toList();
    }

    private Set<Field> used(String text) {
        String plain = text.toLowerCase(Locale.ROOT);
        return entries.stream().filter(e -> stands(e.label(), plain)).collect(Collectors.toSet());
    }

    private static boolean stands(String word, String text) {
        return Pattern.compile("\\b" + Pattern.quote(word.toLowerCase(Locale.ROOT)) + "(s|es)?\\b")
                .matcher(text)
                .find();
    }
}
