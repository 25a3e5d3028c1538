package witnessmark.document.page;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.SignedJudgement;
import witnessmark.document.Dossier;

/** What carried a signed judgement, each with what it was where the bare title would read as found. */
final class SignedGrounds {
    private SignedGrounds() {}

    static List<String> of(SignedJudgement signed, Dossier dossier, SayOnPaper words) {
        Map<String, FindingEntry> entered = new HashMap<>();
        dossier.file().findings().values().forEach(f -> entered.put(FoundRow.title(dossier, f.finding()), f));
        Set<String> corrected = ClaimPage.corrected(dossier);
        return signed.carriedBy().stream()
                .map(dossier.knowledge()::text)
                .map(title -> entered.containsKey(title) ? told(title, entered.get(title), corrected, words) : title)
                .toList();
    }

    private static String told(String title, FindingEntry finding, Set<String> corrected, SayOnPaper words) {
        return corrected.contains(finding.finding())
                ? words.say("since-corrected", title)
                : title + words.say("reason-" + finding.state().word());
    }
}
