/**
 * The commands that write documents, and the gathering of what they are written from. It must not lay out pages.
 */
@NullMarked
package witnessmark.shell.paper;

import org.jspecify.annotations.NullMarked;
