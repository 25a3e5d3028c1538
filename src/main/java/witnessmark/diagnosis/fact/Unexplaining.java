package witnessmark.diagnosis.fact;

import java.util.List;

/** The cause was seen, but hardly explains any of these symptoms on record. */
public record Unexplaining(String cause, List<String> symptoms) {
    public Unexplaining {
        symptoms = List.copyOf(symptoms);
    }
}
