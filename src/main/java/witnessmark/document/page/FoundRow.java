package witnessmark.document.page;

import java.util.List;
import java.util.Optional;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.RankedCause;
import witnessmark.document.Dossier;
import witnessmark.gearbox.EnumWord;
import witnessmark.knowledge.Finding;

/** One finding as it was recorded. */
public record FoundRow(String id, String title, String state, String note) {

    static List<FoundRow> of(Dossier dossier) {
        return dossier.file().findings().values().stream()
                .map(entry -> of(dossier, entry))
                .toList();
    }

    static FoundRow of(Dossier dossier, FindingEntry entry) {
        return new FoundRow(
                entry.finding(),
                title(dossier, entry.finding()),
                stateWord(new SayOnPaper(dossier), entry),
                entry.note());
    }

    /** The title of a finding; its id where the knowledge base does not know it. */
    static String title(Dossier dossier, String finding) {
        Finding known = dossier.knowledge().findings().get(finding);
        return known == null ? finding : known.title();
    }

    /** Titles of what the cause should show and nobody looked at; what the program works out is nothing to look at. */
    static List<String> unchecked(Dossier dossier, RankedCause cause) {
        return cause.unchecked().stream()
                .filter(id -> !Optional.ofNullable(
                                dossier.knowledge().findings().get(id))
                        .filter(f -> f.kind() == Finding.Kind.COMPUTED)
                        .isPresent())
                .map(id -> title(dossier, id))
                .toList();
    }

    /** What was found, or what somebody says was. */
    static String stateWord(SayOnPaper words, FindingEntry entry) {
        return entry.toldBy()
                .map(teller -> words.say(
                        entry.state() == FindingState.ABSENT ? "denied-by" : "told-by",
                        words.say("teller-" + teller.word())))
                .orElseGet(() -> words.say("found-" + EnumWord.of(entry.state())));
    }
}
