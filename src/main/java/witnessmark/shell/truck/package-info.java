/**
 * The commands that keep trucks and work with their numbers. It must not hold formulas.
 */
@NullMarked
package witnessmark.shell.truck;

import org.jspecify.annotations.NullMarked;
