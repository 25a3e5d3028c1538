package witnessmark.triplog;

/**
 * What was in hand in one second of a log, or in one row of a log slower than that.
 *
 * @param startMicros time of its first row
 * @param inHand gear name, or neutral, pedal down, standing, engine off, cannot tell
 * @param confidence 0 to 1
 * @param kmh mean road speed, NaN if not given
 * @param rpm mean engine speed, NaN if not given
 */
public record GearSecond(long startMicros, String inHand, double confidence, double kmh, double rpm) {}
