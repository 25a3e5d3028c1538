package witnessmark.casefile;

/**
 * How well what was found fits a finding being there, and its not being there. Only the ratio of the two moves a
 * judgement.
 *
 * @param ifPresent chance of what was found if the finding is there; above 0, at most 1
 * @param ifAbsent chance of what was found if it is not; above 0, at most 1
 */
public record Likelihood(double ifPresent, double ifAbsent) {
    public Likelihood {
        checked("if-present", ifPresent);
        checked("if-absent", ifAbsent);
    }

    /** One that fits so many times better with the finding than without; below 1, better without. */
    public static Likelihood ofFactor(double factor) {
        return new Likelihood(Math.min(1, factor), Math.min(1, 1 / factor));
    }

    /** How many times better it fits with the finding than without. */
    public double factor() {
        return ifPresent / ifAbsent;
    }

    private static void checked(String name, double chance) {
        if (!(chance > 0 && chance <= 1)) {
            throw new CaseRefused(name + ": " + chance + " is no chance", "give a number above 0 and at most 1");
        }
    }
}
