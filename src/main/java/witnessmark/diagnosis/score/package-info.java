/** Scores judgements against cases whose outcome is known; it must not know of files or the terminal. */
@NullMarked
package witnessmark.diagnosis.score;

import org.jspecify.annotations.NullMarked;
