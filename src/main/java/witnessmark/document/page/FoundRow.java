package witnessmark.document.page;

import java.util.List;
import witnessmark.casefile.FindingState;
import witnessmark.document.Dossier;
import witnessmark.knowledge.Finding;

/** One finding as it was recorded. */
public record FoundRow(String id, String title, String state, String note) {

    static List<FoundRow> of(Dossier dossier) {
        return dossier.file().findings().values().stream()
                .map(entry -> new FoundRow(
                        entry.finding(),
                        title(dossier, entry.finding()),
                        entry.toldBy().isEmpty() ? stateWord(entry.state()) : entry.toldWords(),
                        entry.note()))
                .toList();
    }

    /** The title of a finding; its id where the knowledge base does not know it. */
    static String title(Dossier dossier, String finding) {
        Finding known = dossier.knowledge().findings().get(finding);
        return known == null ? finding : known.title();
    }

    static String stateWord(FindingState state) {
        return switch (state) {
            case PRESENT -> "present";
            case ABSENT -> "absent: looked at, sound";
            case UNSURE -> "unsure";
            case NOT_LOOKED_AT -> "not looked at";
        };
    }
}
