package witnessmark.knowledge;

import java.util.List;

/** A finding that something must explain: where all of these were looked at and are not there, it contradicts the rest. */
public record ExplainedBy(String finding, List<String> by, String why) {
    public ExplainedBy {
        by = List.copyOf(by);
    }
}
