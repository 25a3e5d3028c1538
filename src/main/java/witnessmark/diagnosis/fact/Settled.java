package witnessmark.diagnosis.fact;

import witnessmark.casefile.FindingState;

/**
 * A finding whose state follows from another one, so that it need not be looked at; it is no evidence of its own.
 *
 * @param otherSource whether it would be learnt from another source than the one it follows from, and so could show
 *     that one of the two is wrong
 */
public record Settled(String finding, FindingState state, String by, boolean otherSource) {}
