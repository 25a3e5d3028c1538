/**
 * Moving off: torque and stress in the shafts, slip energy in the clutch, and the gears to start in.
 * It must not know of shifting under way, of cases, knowledge, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.gearbox.start;

import org.jspecify.annotations.NullMarked;
