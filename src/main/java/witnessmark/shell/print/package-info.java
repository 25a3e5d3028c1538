/**
 * Says answers and refusals: pages wrapped for the terminal, JSON, figures, texts by key, files written whole. It must not know of commands, cases or trucks.
 */
@NullMarked
package witnessmark.shell.print;

import org.jspecify.annotations.NullMarked;
