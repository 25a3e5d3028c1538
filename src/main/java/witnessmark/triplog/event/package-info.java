/**
 * Finds habit events in tracked rows, each with its figures, its rows and how sure it is, and counts the chances for them;
 * says which signals are not to be believed for it.
 * It must not know of file forms, cases, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.triplog.event;

import org.jspecify.annotations.NullMarked;
