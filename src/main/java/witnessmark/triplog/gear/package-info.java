/**
 * Finds the gear in hand from engine speed and road or shaft speed against the truck's ratios, with how sure it is.
 * It must not know of file forms, habit events, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.triplog.gear;

import org.jspecify.annotations.NullMarked;
