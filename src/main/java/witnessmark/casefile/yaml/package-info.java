/**
 * One case as one YAML file that a person can write by hand: reading with every fault named, and writing.
 * It must not know of a database, of the knowledge base or of the terminal.
 */
@NullMarked
package witnessmark.casefile.yaml;

import org.jspecify.annotations.NullMarked;
