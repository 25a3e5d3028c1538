/**
 * What the trade knows: causes, findings, links, look-alikes, checks, advice, cautions, sources; loaded and checked.
 * It must not know of any case, of inference, Drools, Spring or the terminal.
 */
@NullMarked
package witnessmark.knowledge;

import org.jspecify.annotations.NullMarked;
