/**
 * Reads trip logs: one file, or a folder of them over all cores, to summaries, events and what the logs cannot show.
 * It must not know of cases, knowledge, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.triplog;

import org.jspecify.annotations.NullMarked;
