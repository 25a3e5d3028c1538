/**
 * Turns computed results into findings that a case can hold, with inputs and formula.
 * It must not know of how they weigh in a diagnosis, of cases, knowledge, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.gearbox.evidence;

import org.jspecify.annotations.NullMarked;
