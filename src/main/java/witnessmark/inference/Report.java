package witnessmark.inference;

/**
 * What was reported of a finding, as the chance of that very report if the finding is there and if it is not (virtual
 * evidence in Pearl's sense, not Jeffrey's fixed posterior). Only the ratio of the two moves a posterior; equal chances
 * carry nothing.
 *
 * @param ifPresent chance of the report when the finding is there; finite, 0 or more
 * @param ifAbsent chance of the report when it is not; finite, 0 or more, not both 0
 * @throws IllegalArgumentException if a chance is negative, not finite, or both are 0
 */
public record Report(double ifPresent, double ifAbsent) {
    public static final Report PRESENT = new Report(1, 0);
    public static final Report ABSENT = new Report(0, 1);

    public Report {
        if (!isChance(ifPresent) || !isChance(ifAbsent) || ifPresent + ifAbsent == 0) {
            throw new IllegalArgumentException("Report " + ifPresent + ":" + ifAbsent
                    + ": give two finite numbers of 0 or more, at least one of them above 0.");
        }
    }

    /** Whether the report carries nothing: as likely with the finding as without it. */
    public boolean isVacuous() {
        return ifPresent == ifAbsent;
    }

    private static boolean isChance(double value) {
        return value >= 0 && value < Double.POSITIVE_INFINITY;
    }
}
