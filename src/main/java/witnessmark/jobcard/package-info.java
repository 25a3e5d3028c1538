/** Reads the shop's own sentences into proposals for a case; it must not know of cases, the store or the terminal. */
@NullMarked
package witnessmark.jobcard;

import org.jspecify.annotations.NullMarked;
