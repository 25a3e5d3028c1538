/** Starts Witnessmark; it must not hold anything of the job itself. */
@NullMarked
package witnessmark;

import org.jspecify.annotations.NullMarked;
