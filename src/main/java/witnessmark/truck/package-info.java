/**
 * Reads and writes truck profiles as YAML, keeps those of a shop, and holds the ready examples.
 * It must not know of cases, knowledge, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.truck;

import org.jspecify.annotations.NullMarked;
