/**
 * Keeps cases on disk so that what was acknowledged is never lost: entries, searchable present state, attachments.
 * It must not know of the knowledge base, of diagnosis or of the terminal.
 */
@NullMarked
package witnessmark.casefile.store;

import org.jspecify.annotations.NullMarked;
