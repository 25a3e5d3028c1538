package witnessmark.triplog.gear;

import witnessmark.triplog.signal.Signal;

/**
 * A stretch in which a signal stood still, value for value, while others moved: its sender or its wire had failed. It
 * counts as not given there.
 *
 * @param value at which it stood, in the signal's own unit
 * @param fromMicros time of the first such row
 * @param seconds for how long
 */
public record FrozenSignal(Signal signal, double value, long fromMicros, double seconds) {}
