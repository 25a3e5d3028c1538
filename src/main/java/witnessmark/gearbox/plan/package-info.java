/**
 * When to shift this truck, and what to tell its driver.
 * It must not know of how the card is worded or shown, of cases, knowledge, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.gearbox.plan;

import org.jspecify.annotations.NullMarked;
