package witnessmark.shell.judge;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.language.Texts;
import witnessmark.shell.settings.ShopSettings;

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

    /** Finds the language of a run: the command's option, else the shop's setting. */
    @Component
    public static class Choice {
        private final ObjectProvider<Diagnosis> diagnosis;
        private final ShopSettings shop;

        Choice(ObjectProvider<Diagnosis> diagnosis, ShopSettings shop) {
            this.diagnosis = diagnosis;
            this.shop = shop;
        }

        /**
         * The language of an answer.
         *
         * @param option as typed, empty for the shop's
         */
        public Tongue of(String option) {
            Language language = shop.language(option);
            return new Tongue(diagnosis.getObject().in(language), Texts.of("interview", language));
        }
    }
}
