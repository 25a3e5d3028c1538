/**
 * Orders checks so that opening a place is paid once and what is found behind it is worth the minutes. It must not know
 * of cases, causes or where the gains come from.
 */
@NullMarked
package witnessmark.planner;

import org.jspecify.annotations.NullMarked;
