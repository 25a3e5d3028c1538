/**
 * What a trip came to: distance, hours, gears, events with exact intervals, and what the log cannot show.
 * It must not know of file forms, cases, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.triplog.summary;

import org.jspecify.annotations.NullMarked;
