/**
 * Unevenness of universal joints, alone and in a line.
 * It must not know of the gears, of cases, knowledge, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.gearbox.driveline;

import org.jspecify.annotations.NullMarked;
