package witnessmark.diagnosis;

/** The probabilities at which the judgement changes its wording; all are judgement, none is measured. */
public final class Thresholds {
    /** From here a cause may be called the conclusion, if nothing holds it back. */
    public static final double CONCLUDED = 0.70;
    /** From here the rules hear of a cause, and it is worth saying why it may not be concluded; none asks of less. */
    public static final double WORTH_A_WORD = 0.10;
    /** From here a cause is named as a reason for a part seen broken. */
    public static final double WORTH_BELIEVING = 0.01;
    /** From here it is asked what would explain the parts if the cause had not happened. */
    public static final double LEADS = 0.50;
    /** From this strength a finding is expected of a cause. */
    public static final double EXPECTED = 0.55;
    /** From this strength a trace counts as one that the cause leaves. */
    public static final double SOMETIMES = 0.30;
    /** A rival less probable than this, had the cause not happened, does not hold it back. */
    public static final double RIVAL = 0.12;
    /** The same of a look-alike on record that leaves the very break the cause was taken from. */
    public static final double RIVAL_IN_THE_SAME_BREAK = 0.005;
    /** A rival is asked about as if it were at least so likely beforehand. */
    public static final double RIVAL_PRIOR = 0.015;
    /** How many times better the answer to a check must fit a cause than its rival to close the rival. */
    public static final double CLOSES_RIVAL = 2.0;
    /** How many times better the checks of their pair must fit where both leave the same break. */
    public static final double PARTS_THE_SAME_BREAK = 4.5;
    /** How many times likelier with a cause than without must a mark be for a conclusion to rest on it. */
    public static final double BEARS = 4.5;
    /** How many times likelier with a cause than without must a paper or log be to bear witness of it. */
    public static final double WITNESSES = 3.0;
    /** From here a class is pointed to. */
    public static final double POINTS_TO = 0.70;
    /** The same where no cause of it leads. */
    public static final double POINTS_TO_UNLED = 0.90;
    /** A class that names people is pointed to while at most so many looks are missing (tried with 1 to 4). */
    public static final int MISSING_AT_MOST = 2;
    /** From here a cause of another class is named as open beside a concluded one. */
    public static final double OPEN_BESIDE = 0.25;
    /** From here a part seen broken explains a symptom. */
    public static final double EXPLAINS = 0.30;
    /** From here two causes are both likely enough to ask what came first. */
    public static final double BOTH_LIKELY = 0.40;
    /** From here the repair notes of a cause are given. */
    public static final double REPAIR_NOTES = 0.40;
    /** From here coaching points and towing reminders are given. */
    public static final double COACHING = 0.20;
    /** Unsure answers weigh a little each while they are at most so many; more tell nothing, and would cost without bound. */
    public static final int UNSURE_THAT_WEIGH = 16;
    /** From here on a cause that names people is only to be set against what could overturn it. */
    public static final double BEYOND_DOUBT = 0.97;

    /** A contradicted finding matters to a cause that leans on it by more than this, in decibans. */
    public static final double LEANING = 3.0;

    private Thresholds() {}

    /** Odds of a probability; infinite for certainty. */
    public static double odds(double probability) {
        return probability / (1 - probability);
    }
}
