/**
 * The fonts that every document is measured and printed with.
 * It must not know what is written with them.
 */
@NullMarked
package witnessmark.document.font;

import org.jspecify.annotations.NullMarked;
