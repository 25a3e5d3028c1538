package witnessmark.jobcard;

import java.util.List;
import witnessmark.knowledge.Wording;

/**
 * One way to say something.
 *
 * @param ofPart whether it names the part that is looked at, not what is wrong with it
 */
record Phrase(Wording.Of of, String id, boolean ofPart, List<Term> terms, double weight) {}
