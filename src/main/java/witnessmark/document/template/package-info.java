/**
 * Fills the shipped templates, or a shop's own in their place, with text made harmless for the form.
 * It must not know cases, causes or how a document is printed.
 */
@NullMarked
package witnessmark.document.template;

import org.jspecify.annotations.NullMarked;
