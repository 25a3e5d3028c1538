/**
 * Takes a photograph in: checked by content, scaled down, its location removed unless kept on purpose.
 * It must not know which case or finding it is for, or the store.
 */
@NullMarked
package witnessmark.document.photo;

import org.jspecify.annotations.NullMarked;
