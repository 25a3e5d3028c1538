/**
 * Wires the commands and the services they call into one program. It must not parse, judge or print anything itself.
 */
@NullMarked
package witnessmark.shell;

import org.jspecify.annotations.NullMarked;
