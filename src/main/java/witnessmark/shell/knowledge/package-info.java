/**
 * The commands that look into the knowledge base, and where it comes from. It must not read or judge cases: of one it asks
 * only whether its words are known.
 */
@NullMarked
package witnessmark.shell.knowledge;

import org.jspecify.annotations.NullMarked;
