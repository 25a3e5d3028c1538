/**
 * What documents are made of: the dossier of a case, kinds, forms, languages, papers, the shipped fonts,
 * which signs show on paper.
 * It must not know Spring, the database or the terminal; it states results and draws none of its own.
 */
@NullMarked
package witnessmark.document;

import org.jspecify.annotations.NullMarked;
