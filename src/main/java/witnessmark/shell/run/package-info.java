/**
 * Runs a command, the same way from arguments, a script and a typed line: words to options, refusals to exit codes. It must not know what any command does.
 */
@NullMarked
package witnessmark.shell.run;

import org.jspecify.annotations.NullMarked;
