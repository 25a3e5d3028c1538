package witnessmark.diagnosis;

import java.util.List;

/** The advice for a case, each piece with the rule's reason. */
public record AdviceGiven(List<Piece> repair, List<Piece> coaching, List<Piece> towing, List<Piece> cautions) {

    /**
     * One piece of advice.
     *
     * @param id id in the knowledge base; empty for a repair note
     */
    public record Piece(String id, String text, String why) {}
}
