/** Finds causes and findings by plain words of the trade; it must not know of cases or the terminal. */
@NullMarked
package witnessmark.knowledge.search;

import org.jspecify.annotations.NullMarked;
