/**
 * The commands that open, fill, move and close cases. It must not hold SQL, rules or judgement.
 */
@NullMarked
package witnessmark.shell.cases;

import org.jspecify.annotations.NullMarked;
