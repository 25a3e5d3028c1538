/**
 * The commands that look into the knowledge base, and where it comes from. It must not know of cases.
 */
@NullMarked
package witnessmark.shell.knowledge;

import org.jspecify.annotations.NullMarked;
