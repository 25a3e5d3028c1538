package witnessmark.diagnosis.fact;

import witnessmark.casefile.FindingState;

/**
 * How a value without a limit reads on one side, against what is usual and the unit's own earlier samples.
 *
 * @param state whether it is beyond that side; unsure where this cannot be told
 * @param why the sentence that says it, with where the figures are from
 */
public record Compared(String measure, Yields.Side side, FindingState state, String why) {}
