/**
 * Judges a case: rules turn what was recorded into evidence, the cause network is asked, and rules decide what may be
 * said. It must not know of SQL, files or the terminal.
 */
@NullMarked
package witnessmark.diagnosis;

import org.jspecify.annotations.NullMarked;
