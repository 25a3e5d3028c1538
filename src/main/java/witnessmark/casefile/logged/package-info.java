/**
 * What a case keeps of trip logs: their results as evidence, what all of them come to as one witness, doubts, doubles.
 * It must not read logs, and not know of causes or the terminal.
 */
@NullMarked
package witnessmark.casefile.logged;

import org.jspecify.annotations.NullMarked;
