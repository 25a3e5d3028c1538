package witnessmark.document.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.Entry;
import witnessmark.document.Dossier;

/**
 * The history of a case as its documents show it.
 *
 * @param check the outcome of checking the chain when the document was written
 */
public record ChainRows(String check, List<Row> entries, List<Person> people) {

    private static final int LONGEST = 300;

    /** One entry. */
    public record Row(String number, String time, String who, String what, String hash) {}

    /** Who recorded how much, and when. */
    public record Person(String who, String entries, String first, String last) {}

    static ChainRows of(CaseHistory history, Dossier dossier) {
        SayOnPaper words = new SayOnPaper(dossier);
        SayChange changes = new SayChange(dossier);
        return new ChainRows(
                words(history.verify(), history, words),
                history.entries().stream().map(e -> row(e, changes)).toList(),
                people(history.entries()));
    }

    private static String words(ChainCheck check, CaseHistory history, SayOnPaper words) {
        if (check instanceof ChainCheck.Broken broken) {
            return words.say("chain-broken", broken.number());
        }
        return words.say(
                "chain-intact", history.entries().size(), history.last().hash());
    }

    private static Row row(Entry entry, SayChange changes) {
        return new Row(
                String.valueOf(entry.number()),
                SayOnPaper.time(entry.stamp().time()),
                entry.stamp().who(),
                shortened(changes.of(entry.change())),
                entry.hash());
    }

    static List<Person> people(List<Entry> entries) {
        Map<String, List<Entry>> byWho = new LinkedHashMap<>();
        entries.forEach(e ->
                byWho.computeIfAbsent(e.stamp().who(), w -> new ArrayList<>()).add(e));
        return byWho.entrySet().stream()
                .map(e -> new Person(
                        e.getKey(),
                        String.valueOf(e.getValue().size()),
                        SayOnPaper.time(e.getValue().get(0).stamp().time()),
                        SayOnPaper.time(e.getValue()
                                .get(e.getValue().size() - 1)
                                .stamp()
                                .time())))
                .toList();
    }

    /** Cut behind a word where there is one; the whole of an entry stands in the case's YAML form. */
    static String shortened(String text) {
        if (text.codePointCount(0, text.length()) <= LONGEST) {
            return text;
        }
        String start = text.substring(0, text.offsetByCodePoints(0, LONGEST));
        int word = start.lastIndexOf(' ');
        return beforeOpenTitle(word > LONGEST / 2 ? start.substring(0, word) : start) + " …";
    }

    /** A title in quotation marks stands whole or not at all. */
    private static String beforeOpenTitle(String start) {
        boolean open = start.chars().filter(c -> c == '"').count() % 2 == 1;
        int last = open ? start.lastIndexOf('"') : start.lastIndexOf('«');
        open |= last > start.lastIndexOf('»');
        return open && last > LONGEST / 2 ? start.substring(0, last).stripTrailing() : start;
    }
}
