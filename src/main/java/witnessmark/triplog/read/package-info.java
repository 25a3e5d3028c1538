/**
 * Reads CSV and candump text logs, plain or gzip, as a stream in constant memory and counts every line it cannot use.
 * It must not know of gears, events, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.triplog.read;

import org.jspecify.annotations.NullMarked;
