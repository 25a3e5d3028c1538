/**
 * The append-only history of a case: changes, entries chained by SHA-256, and the fold to the present state.
 * It must not know of YAML, a database or the terminal.
 */
@NullMarked
package witnessmark.casefile.history;

import org.jspecify.annotations.NullMarked;
