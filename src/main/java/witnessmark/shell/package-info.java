/**
 * The commands: parses what was typed, calls one service, prints. It must not hold rules, SQL or physics.
 */
@NullMarked
package witnessmark.shell;

import org.jspecify.annotations.NullMarked;
