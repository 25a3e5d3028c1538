/**
 * Reads YAML from outside with the place of every fault kept, sizes bounded, and no tags, anchors or aliases.
 * It must not know what the documents are about.
 */
@NullMarked
package witnessmark.yaml;

import org.jspecify.annotations.NullMarked;
