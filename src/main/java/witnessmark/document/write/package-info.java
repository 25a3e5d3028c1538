/**
 * Writes a document: the page for its reader filled into a template, as Markdown, HTML or PDF.
 * It must not know where cases come from, or of the terminal.
 */
@NullMarked
package witnessmark.document.write;

import org.jspecify.annotations.NullMarked;
