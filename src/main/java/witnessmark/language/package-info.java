/**
 * The one way to a text in another language: texts are data, by key, a file for each language. It must not know what the
 * texts are about.
 */
@NullMarked
package witnessmark.language;

import org.jspecify.annotations.NullMarked;
