/**
 * Takes a photograph in: checked by content, scaled down, its location removed unless kept on purpose.
 * It must not know cases, findings or the store.
 */
@NullMarked
package witnessmark.document.photo;

import org.jspecify.annotations.NullMarked;
