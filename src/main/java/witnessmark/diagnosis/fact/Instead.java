package witnessmark.diagnosis.fact;

import java.util.List;

/**
 * What would explain the parts if the cause had not happened: a cause of another class, not looked at.
 *
 * @param probability of the other on what the parts show, the cause known absent, 0 to 1
 * @param seen whether the other was itself seen
 * @param spokenFor whether it was seen, or a paper, log, reading or tale bears witness of it and not of the cause
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
