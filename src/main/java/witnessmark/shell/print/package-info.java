/**
 * Says answers and refusals: pages wrapped for the terminal, JSON, CSV, figures, texts by key, files written whole; and what
 * commands share in what they say. It must not know of any one command, of cases or of trucks.
 */
@NullMarked
package witnessmark.shell.print;

import org.jspecify.annotations.NullMarked;
