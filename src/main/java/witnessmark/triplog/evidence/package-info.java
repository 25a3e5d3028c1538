/**
 * Turns what logs showed, and what they could have shown, into findings with likelihoods.
 * It must not know of cases, the knowledge base, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.triplog.evidence;

import org.jspecify.annotations.NullMarked;
