/**
 * Road speeds, steps between gears and the speeds that belong to a range.
 * It must not know of shift energy, of cases, knowledge, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.gearbox.speed;

import org.jspecify.annotations.NullMarked;
