/**
 * Asks the technician: what truck, what complaint, then the most telling open question each time, until nothing open
 * would change the verdict enough. It must not know of the terminal, of SQL or of the framework.
 */
@NullMarked
package witnessmark.interview;

import org.jspecify.annotations.NullMarked;
