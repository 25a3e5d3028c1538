/**
 * What a case keeps of trip logs: their results as evidence, what all of them come to as one witness, whether they are of its
 * truck and time (unit, clock, odometer, layout), and what was added twice.
 * It must not read logs, and not know of causes or the terminal.
 */
@NullMarked
package witnessmark.casefile.logged;

import org.jspecify.annotations.NullMarked;
