/**
 * Reads the shop's own sentences into proposals, which somebody else puts into a case; it must not know that case, the store
 * or the terminal.
 */
@NullMarked
package witnessmark.jobcard;

import org.jspecify.annotations.NullMarked;
