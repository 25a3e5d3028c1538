package witnessmark.triplog.read;

/**
 * What the log's clock did.
 *
 * @param duplicates rows with the time of the row before, left out
 * @param backward rows up to two seconds older than the row before, left out
 * @param setBack times the clock went back further; the reading starts afresh there
 * @param gaps times without rows for longer than the log's own habit; nothing is assumed of that time
 * @param gapSeconds how long the gaps are together
 * @param jumpsAhead times the clock went ahead by more than a day, counted as no time at all
 */
public record ClockFaults(long duplicates, long backward, long setBack, long gaps, double gapSeconds, long jumpsAhead) {

    public static final ClockFaults NONE = new ClockFaults(0, 0, 0, 0, 0, 0);

    public ClockFaults plus(ClockFaults other) {
        return new ClockFaults(
                duplicates + other.duplicates,
                backward + other.backward,
                setBack + other.setBack,
                gaps + other.gaps,
                gapSeconds + other.gapSeconds,
                jumpsAhead + other.jumpsAhead);
    }
}
