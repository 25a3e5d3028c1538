/**
 * Draws the gearbox with the parts concerned, how damage comes about, and the weight of the evidence, as SVG.
 * It must not know the store, templates or how a document is printed.
 */
@NullMarked
package witnessmark.document.drawing;

import org.jspecify.annotations.NullMarked;
