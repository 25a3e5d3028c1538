package witnessmark.diagnosis;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import witnessmark.casefile.SignedJudgement;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Vocabulary.CauseClass;
import witnessmark.language.Language;

/** A signed verdict in words, in the language of the knowledge; in English the very words that were signed. */
public final class SignedSentence {
    private final KnowledgeBase knowledge;
    private final Sentences say;

    public SignedSentence(KnowledgeBase knowledge) {
        this.knowledge = knowledge;
        this.say = new Sentences(knowledge.language());
    }

    /** The words as signed also where a class is not known here, for then there are no others. */
    public String of(SignedJudgement signed) {
        if (knowledge.language() == Language.ENGLISH) {
            return signed.sentence();
        }
        List<String> causes =
                signed.carrying().stream().map(c -> knowledge.text(c.title())).toList();
        if (causes.isEmpty()) {
            return isUndetermined(signed) ? say.say("verdict-undetermined") : signed.sentence();
        }
        Optional<CauseClass> of = knowledge.vocabulary().classes().stream()
                .filter(c -> c.id().equals(signed.pointsTo().orElse(signed.verdict())))
                .findFirst();
        return of.map(c -> signed.pointsTo().isPresent() ? pointing(c, causes) : concluded(c, causes.get(0)))
                .orElse(signed.sentence());
    }

    private static boolean isUndetermined(SignedJudgement signed) {
        return signed.standing().equals(Verdict.Standing.UNDETERMINED.word());
    }

    private String concluded(CauseClass of, String cause) {
        return of.blames()
                ? say.say("verdict-blames", cause, of.title().toLowerCase(Locale.ROOT))
                : say.say("verdict", of.title(), of.plain(), cause);
    }

    private String pointing(CauseClass of, List<String> causes) {
        return say.say(
                "verdict-points-to", of.title().toLowerCase(Locale.ROOT), String.join(say.say("verdict-or"), causes));
    }
}
