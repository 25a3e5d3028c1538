package witnessmark.knowledge;

/**
 * By how much a measure must have risen over the highest earlier sample of the same unit to count as high; both must hold.
 *
 * @param times so many times the earlier one, 1 and more
 * @param by so much more than the earlier one, in the measure's unit, as a small figure doubles by chance
 * @param from where the figures are from, in words
 */
public record Rise(double times, double by, String from) {

    /** Whether {@code value} is a rise over {@code earlier}, both in the measure's unit. */
    public boolean isRise(double value, double earlier) {
        return value >= times * earlier && value - earlier >= by;
    }

    Rise saidFrom(String other) {
        return new Rise(times, by, other);
    }
}
