/**
 * Packs a case with its documents, attachments and hashes in one ZIP file, and unpacks one that came from outside.
 * It must not know the store or the terminal.
 */
@NullMarked
package witnessmark.document.packet;

import org.jspecify.annotations.NullMarked;
