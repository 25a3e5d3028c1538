package witnessmark.diagnosis;

/** The probabilities at which the judgement changes its wording; all are judgement, none is measured. */
public final class Thresholds {
    /** From here a cause may be called the conclusion, if nothing holds it back. */
    public static final double CONCLUDED = 0.70;
    /** From here a class may be concluded although no single cause of it is; not for classes that blame. */
    public static final double CLASS_CONCLUDED = 0.85;
    /** A held-back leader with this many times the odds of the best conclusion leaves the verdict open. */
    public static final double LEADER_ODDS = 3.0;
    /** From here it is worth saying why a cause may not be concluded. */
    public static final double WORTH_A_WORD = 0.10;
    /** From here the rules hear of a cause at all. */
    public static final double WORTH_BELIEVING = 0.01;
    /** From this strength a finding is expected of a cause. */
    public static final double EXPECTED = 0.55;
    /** From here two causes are both likely enough to ask what came first. */
    public static final double BOTH_LIKELY = 0.40;
    /** From here the repair notes of a cause are given. */
    public static final double REPAIR_NOTES = 0.40;
    /** From here coaching points and towing reminders are given. */
    public static final double COACHING = 0.20;
    /** From here on a cause that names people is only to be set against what could overturn it. */
    public static final double BEYOND_DOUBT = 0.97;

    /** A contradicted finding matters to a cause that leans on it by more than this, in decibans. */
    public static final double LEANING = 3.0;

    private static final double LOOK_ALIKE_LIKELY = 0.25;
    private static final double LOOK_ALIKE_SMALL = 0.08;
    private static final double FAR_BEHIND_ODDS = 50;

    private Thresholds() {}

    /** Whether a look-alike of probability {@code other} is neither ruled out nor far behind one of {@code cause}. */
    public static boolean lookAlikeOpen(double cause, double other) {
        if (other >= LOOK_ALIKE_LIKELY) {
            return true;
        }
        return other >= LOOK_ALIKE_SMALL && odds(cause) < FAR_BEHIND_ODDS * odds(other);
    }

    /** Odds of a probability; infinite for certainty. */
    public static double odds(double probability) {
        return probability / (1 - probability);
    }
}
