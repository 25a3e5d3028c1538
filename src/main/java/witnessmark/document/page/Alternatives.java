package witnessmark.document.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.document.Dossier;
import witnessmark.document.OddsFactor;

/** What else could have left the same marks, and what became of it. */
final class Alternatives {
    private static final double RULED_OUT = 0.08;
    private static final int MOST_FINDINGS = 4;
    private static final int MOST_ROWS = 5;

    /**
     * One look-alike.
     *
     * @param of the cause it could be taken for
     * @param chance empty where nothing can be told yet
     * @param outcome whether it is ruled out, far behind or open, and by what
     */
    public record Row(String title, String of, String chance, String outcome, String tells, String openChecks) {}

    private final Dossier dossier;
    private final SayOnPaper words;

    Alternatives(Dossier dossier) {
        this.dossier = dossier;
        this.words = new SayOnPaper(dossier);
    }

    /** The look-alikes, those nearest to being the cause first, as far as a reader takes them in. */
    List<Row> rows(List<RankedCause> causes) {
        List<Map.Entry<RankedCause, RankedCause.Rivalry>> pairs = new ArrayList<>();
        for (RankedCause cause : causes) {
            cause.lookAlikes().forEach(rival -> pairs.add(Map.entry(cause, rival)));
        }
        Set<String> told = new HashSet<>();
        return pairs.stream()
                .sorted(Comparator.comparingDouble(p -> -p.getValue().probability()))
                .filter(p -> told.add(p.getValue().cause()))
                .limit(MOST_ROWS)
                .map(p -> row(p.getKey(), p.getValue()))
                .toList();
    }

    private Row row(RankedCause cause, RankedCause.Rivalry rival) {
        return new Row(
                rival.title(),
                cause.title(),
                words.chanceOf(rival.probability(), dossier.judgement().verdict()),
                outcome(rival),
                rival.tells(),
                SayOnPaper.list(rival.openChecks().stream()
                        .map(id -> FoundRow.title(dossier, id))
                        .toList()));
    }

    private String outcome(RankedCause.Rivalry rival) {
        Judgement judgement = dossier.judgement();
        Optional<RankedCause> ranked = judgement.causes().stream()
                .filter(c -> c.id().equals(rival.cause()))
                .findFirst();
        if (ranked.isEmpty()) {
            return words.say("alternative-explains-nothing");
        }
        List<String> against = ranked.get().evidenceAgainst().stream()
                .limit(MOST_FINDINGS)
                .map(w -> words.against(ranked.get(), w) + ", " + OddsFactor.text(w.decibans()))
                .toList();
        String by = against.isEmpty()
                ? words.say("alternative-nothing-against")
                : words.say("alternative-against", SayOnPaper.list(against));
        return words.say(rival.probability() < RULED_OUT ? "alternative-behind" : "alternative-open", by);
    }
}
