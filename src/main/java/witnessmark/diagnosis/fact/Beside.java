package witnessmark.diagnosis.fact;

import java.util.List;

/**
 * Another cause, of another owner, beside the cause.
 *
 * @param shown whether it is as likely as a conclusion; else it is possible, and was not ruled out
 * @param looks open findings that would close it
 */
public record Beside(String cause, String other, boolean shown, List<String> looks) {
    public Beside {
        looks = List.copyOf(looks);
    }
}
