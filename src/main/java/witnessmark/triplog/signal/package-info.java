/**
 * What a trip log can carry: the signals with their units, one row of them, and a block of rows by column.
 * It must not know of file forms, gears in hand, events, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.triplog.signal;

import org.jspecify.annotations.NullMarked;
