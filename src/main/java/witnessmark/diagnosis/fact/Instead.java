package witnessmark.diagnosis.fact;

import java.util.List;

/**
 * What would explain the parts if the cause had not happened: a cause of another class, not looked at.
 *
 * @param probability of the other on what the parts show, the cause known absent, 0 to 1
 * @param seen whether a part shows the other that does not show the cause
 * @param spokenFor whether it was so seen, or a witness or tale speaks of it alone
 * @param tells what tells the two apart; empty where no pair says so
 * @param looks open findings that would close it
 */
public record Instead(
        String cause,
        String other,
        double probability,
        boolean seen,
        boolean spokenFor,
        String tells,
        List<String> looks) {
    public Instead {
        looks = List.copyOf(looks);
    }
}
