/**
 * What a shop sets once: its units, language, paper, name and logo, who works and where things are kept. It must not know what any
 * command does with a setting.
 */
@NullMarked
package witnessmark.shell.settings;

import org.jspecify.annotations.NullMarked;
