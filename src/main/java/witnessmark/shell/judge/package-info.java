/**
 * The commands that judge a case, give the reasons, and score judgements; a judgement as text and as JSON. It must not hold rules or probabilities of its own.
 */
@NullMarked
package witnessmark.shell.judge;

import org.jspecify.annotations.NullMarked;
