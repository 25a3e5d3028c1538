package witnessmark.diagnosis.fact;

import witnessmark.casefile.FindingState;

/** A finding as it enters the reasoning, and from what. */
public record Taken(String finding, FindingState state, String from) {
    public static final String AS_REPORTED = "reported";

    public boolean isAsReported() {
        return from.equals(AS_REPORTED);
    }
}
