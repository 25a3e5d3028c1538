/**
 * The commands that ask the technician: dialogues at the terminal or from prepared answers. It must not choose questions; it asks those that are given to it.
 */
@NullMarked
package witnessmark.shell.interview;

import org.jspecify.annotations.NullMarked;
