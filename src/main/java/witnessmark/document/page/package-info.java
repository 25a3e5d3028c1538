/**
 * What stands on each document, worked out of a case and its judgement, ready to be filled into a template.
 * It must not know HTML, Markdown, PDF or files.
 */
@NullMarked
package witnessmark.document.page;

import org.jspecify.annotations.NullMarked;
