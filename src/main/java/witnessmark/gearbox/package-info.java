/**
 * The gearbox and truck as machines: layout, ratios, speeds, shift physics, exposure in towing and coasting.
 * It must not know of cases, knowledge, Spring, Drools, a database or the terminal.
 */
@NullMarked
package witnessmark.gearbox;

import org.jspecify.annotations.NullMarked;
