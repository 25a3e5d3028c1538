/**
 * What a range or splitter shift does to cone, dogs, clutch disc and engine.
 * It must not know of the driver's reasons, of cases, knowledge, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.gearbox.shift;

import org.jspecify.annotations.NullMarked;
