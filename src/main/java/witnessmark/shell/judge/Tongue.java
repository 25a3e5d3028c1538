package witnessmark.shell.judge;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.language.Texts;

/**
 * In which language an answer is given: judged and worded alike.
 *
 * @param diagnosis judges in it
 * @param wording what the program says around it
 */
public record Tongue(Diagnosis diagnosis, Texts wording) {
    public KnowledgeBase knowledge() {
        return diagnosis.knowledge();
    }

    /** Makes the tongue of a language. */
    @Component
    public static class Choice {
        private final ObjectProvider<Diagnosis> diagnosis;

        Choice(ObjectProvider<Diagnosis> diagnosis) {
            this.diagnosis = diagnosis;
        }

        /** What judges and words in the language. */
        public Tongue of(Language language) {
            return new Tongue(diagnosis.getObject().in(language), Texts.of("interview", language));
        }
    }
}
