/** What every refusal has in common, whichever room refuses; it must not know of any room. */
@NullMarked
package witnessmark.refusal;

import org.jspecify.annotations.NullMarked;
