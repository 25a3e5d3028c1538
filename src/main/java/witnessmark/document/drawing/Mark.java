package witnessmark.document.drawing;

import java.util.List;

/**
 * A part to be marked in the drawing of the gearbox.
 *
 * @param label number or letter in the balloon
 * @param part id of the part in the knowledge base
 * @param partName the part in words
 * @param kind why it is marked
 * @param look how the mark looks, in words
 * @param texts what is said of it, for the list beside the drawing
 */
public record Mark(String label, String part, String partName, Kind kind, String look, List<String> texts) {

    /** Why a part is marked. */
    public enum Kind {
        /** Something was found on it: dense hatching. */
        FOUND,
        /** What was found is not sure: wide hatching. */
        UNSURE,
        /** It is to be looked at next: dashed outline. */
        LOOK_NEXT
    }

    public Mark {
        texts = List.copyOf(texts);
    }
}
