package witnessmark.document.drawing;

import java.util.List;

/**
 * A part to be marked in the drawing of the gearbox.
 *
 * @param label number or letter in the balloon
 * @param part id of the part in the knowledge base
 * @param kind why it is marked
 * @param texts what is said of it, for the list beside the drawing
 */
public record Mark(String label, String part, Kind kind, List<String> texts) {

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

    /** The part in words. */
    public String partName() {
        String words = part.replace('-', ' ');
        return words.equals("pto") ? "Power take-off" : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    /** How the mark looks, in words. */
    public String look() {
        return switch (kind) {
            case FOUND -> "found";
            case UNSURE -> "unsure";
            case LOOK_NEXT -> "look next";
        };
    }
}
