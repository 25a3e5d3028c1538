/**
 * How far floating gears rub while the truck coasts in neutral or is towed on its drive wheels.
 * It must not know of bearings' lives, of cases, knowledge, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.gearbox.exposure;

import org.jspecify.annotations.NullMarked;
