/**
 * The facts the rules join: what was reported and measured, what follows from it, and what is believed.
 * It must not know how facts are stored, inferred from or shown.
 */
@NullMarked
package witnessmark.diagnosis.fact;

import org.jspecify.annotations.NullMarked;
