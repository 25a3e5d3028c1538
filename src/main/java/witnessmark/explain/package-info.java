/**
 * Asks of a judgement what it rests on and what would change it. It must not know of the terminal, of SQL or of rules.
 */
@NullMarked
package witnessmark.explain;

import org.jspecify.annotations.NullMarked;
