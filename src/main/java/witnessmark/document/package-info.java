/**
 * Writes a case for its readers: bench sheet, explanation, evidence record, coaching card, towing-prep sheet, packet.
 * It must not know Spring, the database or the terminal; it states results and draws none of its own.
 */
@NullMarked
package witnessmark.document;

import org.jspecify.annotations.NullMarked;
