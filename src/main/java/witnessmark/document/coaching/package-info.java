/**
 * Says a truck's coaching card in the driver's language.
 * It must not know of cases, causes, a database or the terminal; of results it knows those of the gearbox only.
 */
@NullMarked
package witnessmark.document.coaching;

import org.jspecify.annotations.NullMarked;
