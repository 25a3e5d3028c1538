/**
 * Prints a page as PDF, the same bytes each time.
 * It must not know cases or causes.
 */
@NullMarked
package witnessmark.document.print;

import org.jspecify.annotations.NullMarked;
