/**
 * The commands that read trip logs, and what logs came to as text, JSON, CSV and charts. It must not detect or weigh events itself.
 */
@NullMarked
package witnessmark.shell.log;

import org.jspecify.annotations.NullMarked;
