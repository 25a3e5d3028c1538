package witnessmark.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.diagnosis.fact.Given;
import witnessmark.knowledge.KnowledgeBase;

/** Turns what the rules gave as advice into texts, each piece once. */
final class GiveAdvice {
    private final KnowledgeBase knowledge;
    private final Titles titles;

    GiveAdvice(KnowledgeBase knowledge, Titles titles) {
        this.knowledge = knowledge;
        this.titles = titles;
    }

    AdviceGiven advice(List<Given> given) {
        return new AdviceGiven(
                pieces(given, Given.Kind.REPAIR),
                pieces(given, Given.Kind.COACHING),
                pieces(given, Given.Kind.TOWING),
                pieces(given, Given.Kind.CAUTION));
    }

    private List<AdviceGiven.Piece> pieces(List<Given> given, Given.Kind kind) {
        Map<String, AdviceGiven.Piece> pieces = new LinkedHashMap<>();
        given.stream().filter(g -> g.kind() == kind).forEach(g -> pieces.putIfAbsent(g.text(), piece(g)));
        return new ArrayList<>(pieces.values());
    }

    private AdviceGiven.Piece piece(Given given) {
        String why = titles.fill(given.why());
        return switch (given.kind()) {
            case REPAIR -> new AdviceGiven.Piece("", given.text(), why);
            case COACHING -> new AdviceGiven.Piece(
                    given.text(), knowledge.coaching().get(given.text()).in(knowledge.language()), why);
            case TOWING -> new AdviceGiven.Piece(
                    given.text(), knowledge.towing().get(given.text()).in(knowledge.language()), why);
            case CAUTION -> new AdviceGiven.Piece(
                    given.text(), knowledge.cautions().get(given.text()).in(knowledge.language()), why);
        };
    }
}
