package witnessmark.knowledge;

import java.util.List;

/**
 * The checks that any mechanic makes first for a complaint, whatever is probable.
 *
 * @param symptoms the complaint: one of these is present
 * @param looks what is looked at before a class is named, in the order of the walk round the truck
 */
public record MustLook(String id, String title, List<String> symptoms, List<String> looks) {
    public MustLook {
        symptoms = List.copyOf(symptoms);
        looks = List.copyOf(looks);
    }
}
