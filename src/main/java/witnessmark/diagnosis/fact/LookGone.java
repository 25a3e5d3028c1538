package witnessmark.diagnosis.fact;

/**
 * What was done took the look away.
 *
 * @param to what was done
 * @param soundOnly whether only "sound" cannot be found any more: the part was renewed or set before anybody looked
 */
public record LookGone(String finding, String to, boolean soundOnly) {}
